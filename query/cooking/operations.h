// Operations as words of a sentence.
#pragma once

#include <string>
#include <string_view>

namespace gallipot {

/// The past participle: "boiled", "cut", "beaten".
std::string done(std::string_view op);

}  // namespace gallipot
