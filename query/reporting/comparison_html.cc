// A comparison as a page.
#include "query/reporting/html.h"
#include "query/reporting/report.h"

namespace gallipot {

std::string comparison_as_html(const Comparison& comparison) {
  html::Page page;
  page.title = comparison.dish;
  return html::whole_page(page);
}

}  // namespace gallipot
