#include "models/words/state_html.hpp"

#include <QObject>
#include <set>

#include "document/plan_address.hpp"
#include "document/shown_text.hpp"
#include "models/pictures/palette.hpp"
#include "models/tables/grid_model.hpp"
#include "models/words/place_text.hpp"
#include "models/words/state_text.hpp"

namespace seamtakt::desk {

namespace {

class StateWords : public QObject {
  Q_OBJECT
};

/// The places whose findings make up a schedule's state.
std::set<std::string> places_of(const Results& results, const Schedule& schedule) {
  std::set<std::string> places = {schedule.id};
  if (!schedule.qualification.empty()) places.insert(schedule.qualification);
  for (const PassEvaluation& pass : results.evaluation.passes)
    if (pass.schedule == schedule.id)
      places.insert(pass.weldment + "/" + pass.seam + "/pass " + std::to_string(pass.pass));
  return places;
}

/// The findings of the state, worst first as the results have them.
Findings findings_of(const Results& results, const std::string& place) {
  constexpr std::string_view word = "schedule ";
  const Schedule* schedule =
      place.starts_with(word) ? find_by_id(results.plan->schedules, place.substr(word.size())) : nullptr;
  const std::set<std::string> places = schedule ? places_of(results, *schedule) : std::set<std::string>();
  Findings found;
  for (const Finding& finding : results.findings)
    if (schedule ? places.contains(finding.where) : lies_in(finding.where, place)) found.push_back(finding);
  return found;
}

QString finding_html(const Finding& finding) {
  return QStringLiteral(
             "<p style=\"margin-top:6px\"><span style=\"color:%1\">%2</span>: %3<br><span "
             "style=\"color:%4\">%5"
             "</span></p>")
      .arg(Palette::current().of(finding.severity).name(), severity_word(finding.severity).toHtmlEscaped(),
           shown_text(finding.sentence).toHtmlEscaped(), Palette::current().quiet.name(),
           place_text(finding.where).toHtmlEscaped());
}

}  // namespace

QString state_html(const Results& results, const QString& place) {
  QString html = QStringLiteral("<p style=\"color:%2\">%1</p>")
                     .arg(place_text(place.toStdString()).toHtmlEscaped(), Palette::current().quiet.name());
  const Findings findings = findings_of(results, place.toStdString());
  if (findings.empty())
    return html + QStringLiteral("<p>%1</p>").arg(StateWords::tr("No finding: nothing stands against it."));
  for (int link = 0; link < link_count; ++link) {
    QString of_link;
    for (const Finding& finding : findings)
      if (link_of(finding) == static_cast<Link>(link)) of_link += finding_html(finding);
    if (!of_link.isEmpty())
      html += QStringLiteral("<p style=\"margin-top:14px\"><b>%1</b></p>")
                  .arg(link_word(static_cast<Link>(link)).toHtmlEscaped()) +
              of_link;
  }
  return html;
}

}  // namespace seamtakt::desk

#include "state_html.moc"
