#include "drawing/found_seams.hpp"

#include <cmath>
#include <sstream>

#include "drawing/result_json.hpp"

namespace seamtakt::drawing::tests {

namespace {

std::string line_of(const TrueSeam& seam) {
  std::ostringstream text;
  text << seam.type << " " << seam.part_a << " + " << seam.part_b << ", " << seam.length_mm << " mm, "
       << seam.dihedral_deg << " deg, t " << seam.thickness_a_mm << "/" << seam.thickness_b_mm;
  return text.str();
}

bool agrees(const TrueSeam& truth, const TrueSeam& found) {
  return truth.part_a == found.part_a && truth.part_b == found.part_b && truth.type == found.type &&
         std::abs(truth.length_mm - found.length_mm) <= std::max(0.002 * truth.length_mm, 0.002) &&
         std::abs(truth.dihedral_deg - found.dihedral_deg) <= 1 &&
         std::abs(truth.thickness_a_mm - found.thickness_a_mm) <= 0.05 &&
         std::abs(truth.thickness_b_mm - found.thickness_b_mm) <= 0.05;
}

}  // namespace

std::vector<FoundSeam> FoundSeams::all() const {
  std::vector<FoundSeam> seams;
  for (const Joint& joint : found.joints)
    for (const SeamSide& side : joint.sides) {
      FoundSeam seam;
      seam.seam.part_a = assembly.parts[static_cast<std::size_t>(joint.part_a)].name;
      seam.seam.part_b = assembly.parts[static_cast<std::size_t>(joint.part_b)].name;
      seam.seam.type = type_name(joint.type);
      seam.seam.length_mm = side.length_mm;
      seam.seam.dihedral_deg = side.dihedral_deg ? (*side.dihedral_deg)[1] : -1;
      seam.seam.thickness_a_mm = side.thickness_mm[0].value_or(-1);
      seam.seam.thickness_b_mm = side.thickness_mm[1].value_or(-1);
      for (const std::string& flag : flag_names(side.flags)) seam.flags.insert(flag);
      seam.position = side.position.value_or("");
      seam.is_closed = side.is_closed;
      seams.push_back(std::move(seam));
    }
  return seams;
}

std::vector<TrueSeam> FoundSeams::offered() const {
  std::vector<TrueSeam> offered;
  for (const FoundSeam& seam : all())
    if (seam.flags.empty()) offered.push_back(seam.seam);
  return offered;
}

FoundSeams find_in(const std::filesystem::path& file, const FindOptions& options) {
  FoundSeams seams;
  seams.assembly = read_step(file.string());
  seams.found = find_joints(seams.assembly.parts, options, 60);
  return seams;
}

std::vector<std::string> differences(const std::vector<TrueSeam>& truth, const std::vector<TrueSeam>& found) {
  std::vector<std::string> lines;
  std::vector<bool> is_taken(found.size(), false);
  for (const TrueSeam& seam : truth) {
    std::size_t match = found.size();
    for (std::size_t i = 0; i < found.size() && match == found.size(); ++i)
      if (!is_taken[i] && agrees(seam, found[i])) match = i;
    if (match == found.size())
      lines.push_back("missed " + line_of(seam));
    else
      is_taken[match] = true;
  }
  for (std::size_t i = 0; i < found.size(); ++i)
    if (!is_taken[i]) lines.push_back("extra  " + line_of(found[i]));
  return lines;
}

::testing::AssertionResult agree(const std::vector<TrueSeam>& truth, const std::vector<TrueSeam>& found) {
  const auto lines = differences(truth, found);
  if (lines.empty()) return ::testing::AssertionSuccess();
  auto result = ::testing::AssertionFailure()
                << truth.size() << " seams by its making, " << found.size() << " found";
  for (const std::string& line : lines) result << "\n  " << line;
  return result;
}

}  // namespace seamtakt::drawing::tests
