// Pages are filled from templates, and what comes out of a book never becomes markup.
#include "query/reporting/html.h"

#include <gtest/gtest.h>

#include <stdexcept>

namespace gallipot::html {
namespace {

TEST(Html, EscapesTheFiveSigns) {
  EXPECT_EQ(escape(R"(<b class="x">salt & 'pepper'</b>)"),
            "&lt;b class=&quot;x&quot;&gt;salt &amp; &#39;pepper&#39;&lt;/b&gt;");
  EXPECT_EQ(escape("plain"), "plain");
}

TEST(Html, AWholePageStandsAlone) {
  Page page;
  page.title = "Damsons & <sauce>";
  page.body = "<p>body</p>";
  page.colophon = "From a shelf of <6> books";
  const std::string out = whole_page(page);
  EXPECT_NE(out.find("<title>Damsons &amp; &lt;sauce&gt;</title>"), std::string::npos);
  EXPECT_NE(out.find("<p>body</p>"), std::string::npos);
  EXPECT_NE(out.find("From a shelf of &lt;6&gt; books"), std::string::npos);
  EXPECT_NE(out.find("--plot-1: #0072b2"), std::string::npos) << "the style sheet is inside";
  EXPECT_EQ(out.find("<script"), std::string::npos);
  EXPECT_EQ(out.find("<link"), std::string::npos);
  EXPECT_EQ(out.find("http"), std::string::npos) << "nothing is asked of another host";
}

TEST(Html, ATemplateThatIsNotThereIsAFaultOfTheProgram) {
  EXPECT_THROW(render("no_such_page", Fields{}), std::logic_error);
}

}  // namespace
}  // namespace gallipot::html
