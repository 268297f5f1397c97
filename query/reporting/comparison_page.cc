#include "query/reporting/comparison_page.h"

#include "query/reporting/html.h"
#include "query/reporting/report.h"

namespace gallipot {

std::string comparison_body(const Comparison& comparison,
                            const std::function<std::string(const std::string&)>& address_of) {
  (void)address_of;
  return "<pre>" + html::escape(comparison_as_text(comparison, {})) + "</pre>";
}

}  // namespace gallipot
