#include <string_view>
#include <unordered_map>

#include "exchange/picture/weldment_svg.hpp"
#include "exchange/sheets/cell_text.hpp"

namespace seamtakt {

std::vector<SeamMark> seam_marks(const Weldment& weldment, const Findings& findings) {
  std::vector<SeamMark> marks(weldment.seams.size());
  std::unordered_map<std::string_view, std::size_t> index;
  for (std::size_t i = 0; i < weldment.seams.size(); ++i) index.emplace(weldment.seams[i].id, i);
  for (const Finding& finding : findings) {
    std::string_view place = finding.where;
    if (!place.starts_with(weldment.id) || place.size() <= weldment.id.size() ||
        place[weldment.id.size()] != '/')
      continue;
    place.remove_prefix(weldment.id.size() + 1);
    const auto at = index.find(place.substr(0, place.find('/')));
    if (at == index.end()) continue;
    SeamMark& mark = marks[at->second];
    const bool has_figures = finding.value && finding.limit;
    const bool is_first_with_figures =
        mark.severity == finding.severity && has_figures && !(mark.value && mark.limit);
    if (mark.severity && *mark.severity >= finding.severity && !is_first_with_figures) continue;
    mark = {finding.severity, finding.value, finding.limit, finding.unit};
  }
  return marks;
}

std::string mark_text(const SeamMark& mark, const TextView& view) {
  if (!mark.value || !mark.limit) return {};
  return cell_text(PatternCell{"{1} of {2}"_word,
                               {view.number({*mark.value, mark.unit.c_str(), 3}),
                                view.quantity({*mark.limit, mark.unit.c_str(), 3})}},
                   view);
}

}  // namespace seamtakt
