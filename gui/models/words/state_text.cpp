#include "models/words/state_text.hpp"

#include <QCoreApplication>

#include "document/shown_text.hpp"
#include "models/tables/grid_model.hpp"

namespace seamtakt::desk {

namespace {

double rank(const std::optional<Severity>& severity) {
  return severity ? static_cast<double>(*severity) + 1 : 0;
}

}  // namespace

QString link_word(Link link) {
  switch (link) {
    case Link::seams:
      return QCoreApplication::translate("seamtakt::desk::ChainStrip", "Seams");
    case Link::schedules:
      return QCoreApplication::translate("seamtakt::desk::ChainStrip", "Schedules");
    case Link::heat:
      return QCoreApplication::translate("seamtakt::desk::ChainStrip", "Heat");
    case Link::cell:
      return QCoreApplication::translate("seamtakt::desk::ChainStrip", "Cell");
    case Link::line:
      return QCoreApplication::translate("seamtakt::desk::ChainStrip", "Line");
    case Link::records:
      return QCoreApplication::translate("seamtakt::desk::ChainStrip", "Records");
  }
  return {};
}

QString partly_judged_word() {
  return core_text("partly judged"_word.english());
}

QString not_judged_word() {
  return core_text("not judged"_word.english());
}

QString state_text(const RowState& state) {
  QString text = !state.own && state.is_partly_judged ? partly_judged_word() : severity_word(state.own);
  if (state.beyond)
    text += QStringLiteral("; ") + link_word(state.beyond_link) + QStringLiteral(": ") +
            severity_word(state.beyond);
  return text;
}

double state_rank(const RowState& state) {
  const double own = !state.own && state.is_partly_judged ? 0.5 : rank(state.own);
  return own + rank(state.beyond) / 10;
}

QString tally_text(const Tally& tally) {
  if (tally.total() == 0)
    return QCoreApplication::translate("seamtakt::desk::FindingList", "No findings here");
  return shown_text(Sentence("desk.findings"_key,
                             {{"fails", tally.fail}, {"warnings", tally.warn}, {"notes", tally.note}}));
}

}  // namespace seamtakt::desk
