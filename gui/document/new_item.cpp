#include "document/new_item.hpp"

namespace seamtakt::desk {

std::string id_after(const std::string& id) {
  const std::size_t last = id.find_last_not_of("0123456789");
  const std::size_t digits = last == std::string::npos ? 0 : last + 1;
  if (digits == id.size()) return id + "-2";
  std::string number = id.substr(digits);
  std::size_t at = number.size();
  while (at > 0 && number[at - 1] == '9') number[--at] = '0';
  if (at == 0)
    number.insert(number.begin(), '1');
  else
    ++number[at - 1];
  return id.substr(0, digits) + number;
}

Seam new_seam(const Plan& plan, const Weldment& weldment) {
  Seam seam;
  seam.id = next_id(weldment.seams, weldment.seams.empty() ? "S01" : weldment.seams.back().id);
  seam.joint = "tee";
  seam.thickness_mm = {8, 8};
  seam.leg_mm = 5;
  seam.position = "PB";
  seam.path_mm = {{0, 0, 0}, {300, 0, 0}};
  if (!plan.base_metals.empty()) seam.base_metals = {plan.base_metals[0].id, plan.base_metals[0].id};
  if (!plan.schedules.empty()) seam.schedules = {plan.schedules[0].id};
  if (weldment.seams.empty()) return seam;
  const Seam& like = weldment.seams.back();
  seam.base_metals = like.base_metals;
  seam.thickness_mm = like.thickness_mm;
  seam.path_mm = like.path_mm;
  if (like.leg_mm) seam.leg_mm = like.leg_mm;
  if (like.joint == "tee" && !like.schedules.empty()) seam.schedules = like.schedules;
  return seam;
}

}  // namespace seamtakt::desk
