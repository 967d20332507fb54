#pragma once

#include <string>
#include <vector>

#include "cli/common/command_info.hpp"

namespace seamtakt::cli {

/// A text that is installed, made from the commands as they are declared.
struct ManualFile {
  std::string path;  ///< below the folder `share` of an installation
  std::string text;
};

/// seamtakt(1), and one page a command; commands below a command are sections of its page.
std::vector<ManualFile> man_pages(const CommandInfo& program, const std::string& version);

ManualFile bash_completion(const CommandInfo& program);
ManualFile zsh_completion(const CommandInfo& program);
ManualFile fish_completion(const CommandInfo& program);

/// All of these.
std::vector<ManualFile> manual_files(const CommandInfo& program, const std::string& version);

}  // namespace seamtakt::cli
