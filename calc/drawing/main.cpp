#include <sys/resource.h>
#include <unistd.h>

#include <Standard_Failure.hxx>
#include <cerrno>
#include <charconv>
#include <chrono>
#include <cmath>
#include <csignal>
#include <cstdio>
#include <cstring>
#include <iostream>
#include <new>
#include <string>
#include <string_view>

#ifdef SEAMTAKT_DXF
#include "drawing/dxf/dxf_file.hpp"
#endif
#include "drawing/refusal.hpp"
#include "drawing/result_json.hpp"

namespace seamtakt::drawing {

namespace {

constexpr const char* help =
    "Usage: seamtakt-drawing FILE [options]\n"
    "Finds the seams between the parts of a STEP file (AP203, AP214, AP242), or the lines of a DXF file by\n"
    "their layer.\n\n"
    "  --json             one JSON document on standard output\n"
    "  --gap MM           parts nearer than this touch (default 1mm; up to 10mm)\n"
    "  --up +X|-X|+Y|-Y|+Z|-Z   where up is: seams get their position (ISO 6947)\n"
    "  --unit U           of a DXF file that says none: mm, cm, m, in or ft\n"
    "  --seconds S        a limit for the whole (default 300)\n"
    "  --pair-seconds S   a limit for two parts; slower ones are left out, with a note (default 10)\n"
    "  --memory-MiB N     a limit of memory (default 4096)\n"
    "  --progress         lines about what is done, on standard error\n"
    "  --help\n\n"
    "Exit codes: 0 done; 2 the file or an option can't be used, one line says why; 3 the machine failed or "
    "the time is over;\n130 cancelled (SIGINT, SIGTERM): nothing is printed then.\n";

struct Options {
  std::string file, unit;
  bool json = false, progress = false;
  FindOptions find;
  double seconds = 300;
  double memory_MiB = 4096;
};

double number_of(std::string_view option, std::string_view text, std::string_view unit, double least,
                 double most) {
  std::string_view digits = text;
  if (!unit.empty() && digits.ends_with(unit)) digits.remove_suffix(unit.size());
  double value = 0;
  const auto [end, error] = std::from_chars(digits.data(), digits.data() + digits.size(), value);
  if (error != std::errc() || end != digits.data() + digits.size() || !std::isfinite(value) ||
      value < least || value > most) {
    char range[64];
    std::snprintf(range, sizeof range, "a number from %g to %g", least, most);
    throw Refusal(std::string(option), "\"" + std::string(text) + "\"", range);
  }
  return value;
}

gp_Vec up_of(std::string_view text) {
  const bool has_sign = text.size() == 2 && (text[0] == '+' || text[0] == '-');
  const char axis = has_sign ? text[1] : ' ';
  const double sign = has_sign && text[0] == '-' ? -1 : 1;
  if (axis == 'X' || axis == 'x') return {sign, 0, 0};
  if (axis == 'Y' || axis == 'y') return {0, sign, 0};
  if (axis == 'Z' || axis == 'z') return {0, 0, sign};
  throw Refusal("--up", "\"" + std::string(text) + "\"", "+X, -X, +Y, -Y, +Z or -Z");
}

Options options_of(int count, char** words) {
  Options options;
  const auto value_of = [&](int& i) -> std::string_view {
    if (++i >= count) throw Refusal(words[i - 1], "nothing after it", "a value");
    return words[i];
  };
  for (int i = 1; i < count; ++i) {
    const std::string_view word = words[i];
    if (word == "--json") {
      options.json = true;
    } else if (word == "--progress") {
      options.progress = true;
    } else if (word == "--gap") {
      options.find.gap_mm = number_of(word, value_of(i), "mm", 0, 10);
    } else if (word == "--up") {
      options.find.up = up_of(value_of(i));
    } else if (word == "--unit") {
      options.unit = value_of(i);
    } else if (word == "--seconds") {
      options.seconds = number_of(word, value_of(i), "s", 0.1, 86400);
    } else if (word == "--pair-seconds") {
      options.find.pair_seconds = number_of(word, value_of(i), "s", 0.01, 86400);
    } else if (word == "--memory-MiB") {
      options.memory_MiB = number_of(word, value_of(i), "MiB", 64, 1e6);
    } else if (word.starts_with("-") && word != "-") {
      throw Refusal("the command line", "\"" + std::string(word) + "\"", "an option that --help names");
    } else if (options.file.empty()) {
      options.file = word;
    } else {
      throw Refusal("the command line", "a second file, \"" + std::string(word) + "\"", "one FILE");
    }
  }
  if (options.file.empty()) throw Refusal("the command line", "no file", "FILE; --help says more");
  return options;
}

/// OpenCASCADE's reading can't be stopped from inside.
void end_at_time(int) {
  static constexpr char line[] = "seamtakt-drawing: the time is over (--seconds)\n";
  const auto ignored = write(STDERR_FILENO, line, sizeof line - 1);
  static_cast<void>(ignored);
  _exit(3);
}

/// From here on the result is printed whole.
volatile std::sig_atomic_t is_printing = 0;

void end_when_asked(int) {
  if (is_printing != 0) return;
  static constexpr char line[] = "seamtakt-drawing: cancelled\n";
  const auto ignored = write(STDERR_FILENO, line, sizeof line - 1);
  static_cast<void>(ignored);
  _exit(130);
}

/// Ten lines a second at most, and always the last.
class Progress {
 public:
  explicit Progress(bool is_wanted) : is_wanted_(is_wanted) {}
  void say(const std::string& text) const {
    if (is_wanted_) std::cerr << "progress: " << text << std::endl;
  }
  void pairs(std::size_t done, std::size_t all) {
    const auto now = std::chrono::steady_clock::now();
    if (done + 1 < all && now < next_) return;
    next_ = now + std::chrono::milliseconds(100);
    say(std::to_string(done + 1) + " of " + std::to_string(all) + " pairs of parts");
  }

 private:
  bool is_wanted_;
  std::chrono::steady_clock::time_point next_;
};

void set_limits(const Options& options) {
  const auto bytes = static_cast<rlim_t>(options.memory_MiB * 1024 * 1024);
  rlimit limit{};
  if (getrlimit(RLIMIT_AS, &limit) == 0 && (limit.rlim_max == RLIM_INFINITY || limit.rlim_max > bytes)) {
    limit.rlim_cur = bytes;
    setrlimit(RLIMIT_AS, &limit);
  }
  // Finding ends by itself and keeps what it has; this is for reading, and for a pair that doesn't look at
  // the clock.
  std::signal(SIGALRM, end_at_time);
  std::signal(SIGINT, end_when_asked);
  std::signal(SIGTERM, end_when_asked);
  alarm(static_cast<unsigned>(std::ceil(options.seconds * 1.2 + options.find.pair_seconds)));
}

void print(const std::string& output) {
  is_printing = 1;
  std::cout << output << std::flush;
  if (!std::cout) throw Failure("standard output: " + std::string(std::strerror(errno)));
}

/// A file that ends as a DXF file's does; false: it is another.
bool run_dxf(const Options& options) {
  const std::size_t dot = options.file.rfind('.');
  std::string end = dot == std::string::npos ? "" : options.file.substr(dot);
  for (char& c : end) c = c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
  if (end != ".dxf") {
    if (!options.unit.empty()) throw Refusal("--unit", "a STEP file", "a DXF file: STEP says its unit");
    return false;
  }
#ifdef SEAMTAKT_DXF
  const FlatDrawing drawing = read_dxf(options.file, options.unit);
  print(options.json ? result_json(drawing) : result_text(drawing));
  return true;
#else
  throw Refusal(options.file, "a DXF file", "a STEP file: this program was built without dxflib");
#endif
}

int run(const Options& options) {
  set_limits(options);
  if (run_dxf(options)) return 0;
  Progress progress(options.progress);
  progress.say("reading");
  Drawing drawing;
  drawing.path = options.file;
  drawing.options = options.find;
  drawing.assembly = read_step(options.file);
  drawing.found = find_joints(drawing.assembly.parts, options.find, options.seconds,
                              [&](std::size_t done, std::size_t all) { progress.pairs(done, all); });
  if (drawing.assembly.surfaces > 0)
    drawing.found.notes.push_back(
        {"surfaces",
         std::to_string(drawing.assembly.surfaces) + " shapes are surfaces without a body and were left out.",
         {}});
  print(options.json ? result_json(drawing) : result_text(drawing));
  return 0;
}

/// One line, whatever is in a file's name.
std::string one_line(std::string text) {
  for (char& c : text)
    if (static_cast<unsigned char>(c) < 0x20 || c == 0x7f) c = '?';
  return text;
}

}  // namespace

}  // namespace seamtakt::drawing

int main(int count, char** words) {
  using namespace seamtakt::drawing;
  const auto complain = [](const std::string& text, int code) {
    std::cerr << one_line(text) << "\n";
    return code;
  };
  try {
    for (int i = 1; i < count; ++i)
      if (std::string_view(words[i]) == "--help") {
        std::cout << help;
        return 0;
      }
    return run(options_of(count, words));
  } catch (const Refusal& refusal) {
    return complain(refusal.what(), 2);
  } catch (const Failure& failure) {
    return complain(failure.what(), 3);
  } catch (const Standard_Failure& failure) {
    return complain(std::string("the drawing can't be worked out: ") + failure.GetMessageString(), 2);
  } catch (const std::bad_alloc&) {
    return complain("there isn't enough memory for the drawing (--memory-MiB)", 3);
  } catch (const std::exception& failure) {
    return complain(failure.what(), 3);
  }
}
