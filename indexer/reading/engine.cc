// Runs the engine page by page into a folder of its own, which goes when the reading is done.
#include "indexer/reading/engine.h"

#include <fcntl.h>
#include <fmt/format.h>
#include <spawn.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <chrono>
#include <csignal>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <thread>

#include "indexer/reading/formats.h"
#include "indexer/text/unicode.h"

namespace gallipot {
namespace {

namespace fs = std::filesystem;
using namespace std::chrono_literals;

constexpr auto longest_page = 300s;
constexpr auto longest_pdf = 1800s;
constexpr std::size_t most_pages = 3000;
constexpr const char* resolution = "300";  // dots an inch, as engines want it

/// A folder that goes with its contents.
class Scratch {
 public:
  Scratch() {
    std::string name = (fs::temp_directory_path() / "gallipot-scan-XXXXXX").string();
    if (mkdtemp(name.data())) path_ = name;
  }
  ~Scratch() {
    std::error_code error;
    if (!path_.empty()) fs::remove_all(path_, error);
  }
  Scratch(const Scratch&) = delete;
  Scratch& operator=(const Scratch&) = delete;
  const std::string& path() const { return path_; }

 private:
  std::string path_;
};

enum class Ended : unsigned char { well, badly, late, absent };

/// Waits for a process, and ends it when its time is up.
Ended wait_for(pid_t process, std::chrono::seconds longest) {
  const auto until = std::chrono::steady_clock::now() + longest;
  int status = 0;
  auto pause = 2ms;
  while (true) {
    const pid_t ended = waitpid(process, &status, WNOHANG);
    if (ended == process) break;
    if (ended < 0) return Ended::badly;
    if (std::chrono::steady_clock::now() > until) {
      kill(process, SIGKILL);
      waitpid(process, &status, 0);
      return Ended::late;
    }
    std::this_thread::sleep_for(pause);
    pause = std::min(pause * 2, 50ms);
  }
  if (!WIFEXITED(status)) return Ended::badly;
  return WEXITSTATUS(status) == 0 ? Ended::well : WEXITSTATUS(status) == 127 ? Ended::absent : Ended::badly;
}

/// Runs a program found on the path, its output going to `output`.
Ended run(std::vector<std::string> words, const std::string& output, std::chrono::seconds longest) {
  std::vector<char*> arguments;
  for (std::string& word : words) arguments.push_back(word.data());
  arguments.push_back(nullptr);
  std::vector<std::string> settings = {"OMP_THREAD_LIMIT=1", "LC_ALL=C.UTF-8"};
  for (const char* name : {"PATH", "HOME", "TMPDIR", "TESSDATA_PREFIX"})
    if (const char* value = std::getenv(name)) settings.push_back(std::string(name) + "=" + value);
  std::vector<char*> environment;
  for (std::string& setting : settings) environment.push_back(setting.data());
  environment.push_back(nullptr);
  posix_spawn_file_actions_t actions;
  posix_spawn_file_actions_init(&actions);
  posix_spawn_file_actions_addopen(&actions, STDIN_FILENO, "/dev/null", O_RDONLY, 0);
  posix_spawn_file_actions_addopen(&actions, STDOUT_FILENO, output.c_str(), O_WRONLY | O_CREAT | O_TRUNC, 0600);
  posix_spawn_file_actions_addopen(&actions, STDERR_FILENO, "/dev/null", O_WRONLY, 0);
  pid_t process = 0;
  const int failed = posix_spawnp(&process, arguments[0], &actions, nullptr, arguments.data(), environment.data());
  posix_spawn_file_actions_destroy(&actions);
  if (failed != 0) return failed == ENOENT ? Ended::absent : Ended::badly;
  return wait_for(process, longest);
}

tl::unexpected<Fault> engine_fault(Ended ended, const std::string& program, const std::string& package,
                                   const std::string& file) {
  switch (ended) {
    case Ended::absent:
      return fault(fmt::format("scans need the program {}, which is not installed", program),
                   fmt::format("install Debian's package {}", package), file);
    case Ended::late:
      return fault(fmt::format("{} did not come to an end with this file", program),
                   "see whether the scan is larger than it need be", file);
    default:
      return fault(fmt::format("{} could not read this file", program), "see whether the file is sound", file);
  }
}

std::string ending_of(const fs::path& path) {
  std::string ending = path.extension().string();
  std::transform(ending.begin(), ending.end(), ending.begin(),
                 [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
  return ending;
}

bool is_image(const fs::path& path) {
  static constexpr std::array<std::string_view, 10> endings = {".png", ".jpg", ".jpeg", ".tif", ".tiff",
                                                               ".pnm", ".pgm", ".ppm",  ".pbm", ".webp"};
  return std::find(endings.begin(), endings.end(), ending_of(path)) != endings.end();
}

bool is_reading(const fs::path& path) {
  const std::string ending = ending_of(path);
  return ending == ".hocr" || ending == ".xml" || path.filename().string().ends_with(".hocr.html");
}

std::string bytes_of(const fs::path& path) {
  std::ifstream in(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), {}};
}

/// Pages of a file of hOCR or ALTO.
Outcome<std::vector<ScanPage>> pages_of_reading(const fs::path& path) {
  const auto decoded = decode(bytes_of(path), {});
  if (!decoded) return tl::unexpected(decoded.error());
  const std::string text = to_nfc(decoded->text);
  auto pages = format_of(text, path.string() + ".html") == Format::alto ? pages_of_alto(text) : pages_of_hocr(text);
  if (!pages) {
    Fault f = pages.error();
    f.file = path.string();
    return tl::unexpected(std::move(f));
  }
  return pages;
}

/// What lies beside an image under its name, with its words.
fs::path reading_beside(const fs::path& image) {
  for (const char* ending : {".hocr", ".hocr.html"}) {
    fs::path beside = image;
    beside.replace_extension(ending);
    if (fs::exists(beside)) return beside;
  }
  return {};
}

Outcome<std::vector<ScanPage>> read_image(const fs::path& image, const std::string& scratch) {
  if (const fs::path beside = reading_beside(image); !beside.empty()) return pages_of_reading(beside);
  const std::string out = scratch + "/page.hocr";
  const Ended ended = run({"tesseract", image.string(), "stdout", "hocr"}, out, longest_page);
  if (ended != Ended::well) return engine_fault(ended, "tesseract", "tesseract-ocr", image.string());
  return pages_of_reading(out);
}

std::vector<fs::path> files_in(const std::string& folder, bool (*wanted)(const fs::path&)) {
  std::vector<fs::path> out;
  std::error_code error;
  for (const auto& entry : fs::directory_iterator(folder, error))
    if (entry.is_regular_file(error) && wanted(entry.path())) out.push_back(entry.path());
  std::sort(out.begin(), out.end());
  return out;
}

}  // namespace

Outcome<std::vector<ScanPage>> pages_of_scans(const std::string& path) {
  const Scratch scratch;
  if (scratch.path().empty())
    return fault("no folder for the pages can be made", "see whether the disk is full",
                 fs::temp_directory_path().string());
  std::string folder = path;
  const bool pdf = !fs::is_directory(path);
  if (pdf) {
    folder = scratch.path();
    const Ended ended =
        run({"pdftoppm", "-r", resolution, "-gray", "-png", path, folder + "/page"}, "/dev/null", longest_pdf);
    if (ended != Ended::well) return engine_fault(ended, "pdftoppm", "poppler-utils", path);
  }
  auto files = files_in(folder, is_image);
  const bool read_already = files.empty();
  if (read_already) files = files_in(folder, is_reading);
  if (files.empty())
    return fault("there are no page images here", "put the scans (png, jpg, tif) into this folder", path);
  if (files.size() > most_pages)
    return fault(fmt::format("there are more than {} pages here", most_pages), "split them into their books", path);
  std::vector<ScanPage> out;
  std::uint32_t number = 0;
  for (const fs::path& file : files) {
    auto pages = read_already ? pages_of_reading(file) : read_image(file, scratch.path());
    if (!pages) return tl::unexpected(pages.error());
    for (ScanPage& page : *pages) {
      // Lines of a scan's readings are no lines of a file that anyone can open: the page counts instead.
      ++number;
      page.line = number;
      for (ScanLine& line : page.lines)
        for (ScanWord& word : line.words) word.line = number;
      if (!read_already && !pdf) page.image = file.string();
      if (pdf) page.image.clear();
      out.push_back(std::move(page));
    }
  }
  return out;
}

}  // namespace gallipot
