// Tiles, pages, lists, rows and the command line count the same findings.
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <QProcess>
#include <QTemporaryDir>
#include <algorithm>
#include <array>
#include <set>

#include "base/files/atomic_save.hpp"
#include "models/tables/chain_figures.hpp"
#include "models/tables/finding_index.hpp"
#include "models/tables/seam_model.hpp"
#include "models/words/state_text.hpp"
#include "pages/findings_page.hpp"
#include "pages/heat_page.hpp"
#include "pages/line_page.hpp"
#include "pages/records_page.hpp"
#include "pages/schedules_page.hpp"
#include "pages/seams_page.hpp"
#include "plan/fields/plan_file.hpp"
#include "support/source_path.hpp"
#include "user_actions.hpp"
#include "widgets/finding_list.hpp"
#include "widgets/grid_view.hpp"

namespace seamtakt::desk {
namespace {

/// A finding as the command line prints it.
struct Said {
  std::string rule, where, severity;
  auto operator<=>(const Said&) const = default;
};

/// What `seamtakt COMMAND PLAN --json` finds.
std::multiset<Said> said_by(const char* command, const QString& plan) {
  QProcess program;
  program.start(QStringLiteral(SEAMTAKT_PROGRAM), {command, plan, "--json"});
  EXPECT_TRUE(program.waitForFinished(60000));
  const QJsonDocument document = QJsonDocument::fromJson(program.readAllStandardOutput());
  std::multiset<Said> said;
  for (const QJsonValue each : document["findings"].toArray())
    said.insert({each["rule"].toString().toStdString(), each["where"].toString().toStdString(),
                 each["severity"].toString().toStdString()});
  EXPECT_FALSE(said.empty()) << program.readAllStandardError().toStdString();
  return said;
}

/// `evaluate` judges the power sources over the timeline too; each finding is counted once.
std::multiset<Said> said_of_plan(const QString& plan) {
  std::multiset<Said> said = said_by("evaluate", plan);
  std::erase_if(said, [](const Said& each) { return each.rule.starts_with("cycle."); });
  said.merge(said_by("cycle", plan));
  return said;
}

Tally counted(const std::multiset<Said>& said) {
  Tally tally;
  for (const Said& each : said)
    tally.add(each.severity == "fail"   ? Severity::fail
              : each.severity == "warn" ? Severity::warn
                                        : Severity::note);
  return tally;
}

class CountsTest : public DeskTest {
 protected:
  /// Puts a plan into a file, opens it, and shows it.
  void open(const Plan& plan) {
    path = folder.filePath("counted.weldplan.json");
    save_atomically(path.toStdString(), write_plan(plan));
    ASSERT_TRUE(window->openPlan(path));
    settle();
  }
  const Findings& findings() const { return window->evaluator().results()->findings; }
  FindingList& list(DeskPage page) { return window->page(page).findings(); }

  /// Worst severity among the rows of a table.
  static std::optional<Severity> worst_row(const GridView& table) {
    std::optional<Severity> worst;
    for (int row = 0; row < table.grid().rowCount(); ++row)
      if (const QVariant at = table.grid().index(row, 0).data(SeverityRole); at.isValid())
        worst = std::max(worst, std::optional(static_cast<Severity>(at.toInt())));
    return worst;
  }
  /// Worst severity among the findings of a link that are in one of the places.
  std::optional<Severity> worst_found(Link link, const std::vector<std::string>& places) const {
    std::optional<Severity> worst;
    for (const Finding& finding : findings())
      if (link_of(finding) == link &&
          std::any_of(places.begin(), places.end(), [&](const std::string& place) {
            return finding.where == place || finding.where.starts_with(place + "/");
          }))
        worst = std::max(worst, std::optional(finding.severity));
    return worst;
  }
  void expect_all_agree() {
    expect_command_line();
    expect_tiles_and_lists();
    expect_seam_rows();
    expect_pass_rows();
    expect_schedule_rows();
  }

  void expect_command_line() {
    std::multiset<Said> shown;
    const GridView& table = page_of<FindingsPage>(*window, DeskPage::findings).table();
    const GridModel& grid = table.grid();
    ASSERT_EQ(static_cast<std::size_t>(grid.rowCount()), findings().size());
    for (const Finding& finding : findings())
      shown.insert({finding.rule, finding.where, to_string(finding.severity)});
    const std::multiset<Said> said = said_of_plan(path);
    EXPECT_EQ(shown.size(), said.size());
    for (const Said& each : said)
      EXPECT_EQ(shown.count(each), said.count(each))
          << each.severity << " " << each.rule << " " << each.where;
    const Tally all = counted(said);
    EXPECT_EQ(window->chain().link(DeskPage::findings).figure(), QString("%1 fail").arg(all.fail));
    EXPECT_EQ(window->chain().link(DeskPage::findings).detail(),
              QString("%1 warn, %2 notes").arg(all.warn).arg(all.note));
    EXPECT_EQ(window->chain().link(DeskPage::findings).worst(), all.worst());
  }
  /// Each finding is in the list of one page, and the page's tile has the worst of the list as its mark.
  void expect_tiles_and_lists() {
    Tally sum;
    for (int i = 0; i < link_count; ++i) {
      const DeskPage page = desk_pages[static_cast<std::size_t>(i)];
      const Tally& listed = list(page).tally();
      EXPECT_EQ(list(page).view().grid().rowCount(), listed.total());
      EXPECT_EQ(window->chain().link(page).worst(), listed.worst()) << "tile of " << page;
      EXPECT_EQ(worst_row(list(page).view()), listed.worst());
      sum.fail += listed.fail;
      sum.warn += listed.warn;
      sum.note += listed.note;
      const bool has_figure = !window->chain().link(page).figure().isEmpty();
      if (has_figure && page < DeskPage::line) {
        EXPECT_TRUE(window->chain().link(page).toolTip().contains(tally_text(listed)))
            << window->chain().link(page).toolTip().toStdString();
      }
    }
    EXPECT_EQ(sum, counted(said_of_plan(path)));
    const int failing = list(DeskPage::seams).tally().fail;
    EXPECT_EQ(window->chain().link(DeskPage::seams).detail(),
              failing ? QString("%1 fail").arg(failing) : QString());
  }
  void expect_seam_rows() {
    window->showPage(DeskPage::seams);
    auto& page = page_of<SeamsPage>(*window, DeskPage::seams);
    static_cast<SeamModel&>(page.table().grid()).setWeldment(-1);
    std::optional<Severity> worst;
    const auto& model = static_cast<SeamModel&>(page.table().grid());
    for (int row = 0; row < model.rowCount(); ++row) {
      const std::string place = model.weldmentOf(row).id + "/" + model.seam(row).id;
      EXPECT_EQ(model.rowState(row).own, worst_found(Link::seams, {place})) << place;
      // A row is never called sound while another page has something against it.
      std::optional<Severity> any;
      for (int link = 0; link < link_count; ++link)
        any = std::max(any, worst_found(static_cast<Link>(link), {place}));
      EXPECT_EQ(std::max(model.rowState(row).own, model.rowState(row).beyond), any) << place;
      // Nor where nothing judges its size, its heat or its position.
      const bool is_judged = !model.rowState(row).is_partly_judged;
      EXPECT_EQ(model.index(row, 0).data().toString() == "ok", !any && is_judged) << place;
      const QVariant beyond = model.index(row, 0).data(BeyondRole);
      EXPECT_EQ(beyond.isValid(), any > model.rowState(row).own) << place;
      worst = std::max(worst, model.rowState(row).own);
    }
    EXPECT_EQ(worst, worst_row(page.table()));
    EXPECT_GE(window->chain().link(DeskPage::seams).worst(), worst);
  }
  void expect_pass_rows() {
    const GridModel& grid = page_of<HeatPage>(*window, DeskPage::heat).table().grid();
    const auto& passes = window->evaluator().results()->evaluation.passes;
    ASSERT_EQ(static_cast<std::size_t>(grid.rowCount()), passes.size());
    for (int row = 0; row < grid.rowCount(); ++row) {
      const PassEvaluation& pass = passes[static_cast<std::size_t>(row)];
      const std::string place = pass.weldment + "/" + pass.seam + "/pass " + std::to_string(pass.pass);
      const QVariant shown = grid.index(row, 0).data(SeverityRole);
      const auto found = worst_found(Link::heat, {place});
      EXPECT_EQ(shown.isValid(), found.has_value()) << place;
      if (found) {
        EXPECT_EQ(static_cast<Severity>(shown.toInt()), *found) << place;
      }
    }
  }
  void expect_schedule_rows() {
    const GridModel& grid = page_of<SchedulesPage>(*window, DeskPage::schedules).table().grid();
    const Plan& plan = *window->document().plan();
    for (int row = 0; row < grid.rowCount(); ++row) {
      const Schedule& schedule = plan.schedules[static_cast<std::size_t>(row)];
      std::vector<std::string> places = {schedule.id};
      if (!schedule.qualification.empty()) places.push_back(schedule.qualification);
      for (const PassEvaluation& pass : window->evaluator().results()->evaluation.passes)
        if (pass.schedule == schedule.id)
          places.push_back(pass.weldment + "/" + pass.seam + "/pass " + std::to_string(pass.pass));
      const QVariant shown = grid.index(row, 0).data(SeverityRole);
      const auto found = worst_found(Link::schedules, places);
      EXPECT_EQ(shown.isValid(), found.has_value()) << schedule.id;
      if (found) {
        EXPECT_EQ(static_cast<Severity>(shown.toInt()), *found) << schedule.id;
      }
    }
  }

  QTemporaryDir folder;
  QString path;
};

/// The demo, with faults of every page: a leg too small, a pass too cold, a schedule out of its range.
Plan faulty_demo() {
  Plan plan = load_plan(demo_path().toStdString());
  find_by_id(plan.schedules, "F6S")->travel_speed_mm_s = 13;
  find_by_id(plan.schedules, "F10R")->status = "draft";
  find_by_id(plan.schedules, "F5S")->preheat_C = -20;
  return plan;
}

void accept(Plan& plan, const std::string& rule, const std::string& where) {
  Acceptance accepted;
  accepted.rule = rule;
  accepted.where = where;
  accepted.by = "w. engineer";
  accepted.date = "2026-03-01";
  accepted.why = "tried";
  plan.accepted.push_back(std::move(accepted));
}

TEST_F(CountsTest, AgreeOnTheDemo) {
  open(load_plan(demo_path().toStdString()));
  expect_all_agree();
}

TEST_F(CountsTest, AgreeOnAPlanWithFaultsOfEveryPage) {
  open(faulty_demo());
  for (const DeskPage page : {DeskPage::seams, DeskPage::schedules, DeskPage::heat, DeskPage::cell})
    EXPECT_GT(list(page).tally().total(), 0) << page;
  EXPECT_GT(list(DeskPage::seams).tally().fail, 0);
  expect_all_agree();
}

TEST_F(CountsTest, AgreeOnAPlanWithAcceptedFindings) {
  Plan plan = faulty_demo();
  open(plan);
  const Tally before = counted(said_of_plan(path));
  // One of each page's worst, and one that isn't there any more.
  std::array<bool, link_count> taken{};
  int fails = 0, warns = 0;
  for (const Finding& finding : findings()) {
    bool& is_taken = taken[static_cast<std::size_t>(link_of(finding))];
    if (is_taken || finding.severity == Severity::note) continue;
    is_taken = true;
    accept(plan, finding.rule, finding.where);
    // The same rule may have found two things at one place.
    for (const Finding& each : findings()) {
      if (each.rule != finding.rule || each.where != finding.where) continue;
      fails += each.severity == Severity::fail;
      warns += each.severity == Severity::warn;
    }
  }
  ASSERT_GE(fails + warns, 3);
  ASSERT_TRUE(taken[static_cast<std::size_t>(Link::cell)]);
  accept(plan, "fillet.leg.undersize", "BD/gone");
  open(plan);
  const Tally after = counted(said_of_plan(path));
  EXPECT_EQ(after.fail, before.fail - fails);
  EXPECT_EQ(after.warn, before.warn - warns);
  EXPECT_EQ(after.note, before.note + fails + warns + 1) << "each is a note now, and one acceptance is vain";
  expect_all_agree();
}

TEST_F(CountsTest, TheCellsTileShowsTheWeldmentThatItsMarkIsAbout) {
  open(load_plan(demo_path().toStdString()));
  const auto& cycles = window->evaluator().results()->cycles;
  ASSERT_EQ(window->chain().link(DeskPage::cell).worst(), Severity::fail);
  const auto figure = chain_figures(*window->evaluator().results())[position_of(DeskPage::cell)];
  ASSERT_TRUE(figure.weldment);
  EXPECT_LT(cycles[*figure.weldment].takt_margin_s.value_or(0), 0);
  EXPECT_TRUE(figure.detail.endsWith(QString::fromStdString(cycles[*figure.weldment].weldment)));
  // The longest cycle isn't what the mark is about where its takt is accepted and another has a warning.
  const std::string longest = cycles[*figure.weldment].weldment;
  Plan plan = *window->document().plan();
  accept(plan, "cycle.takt.missed", longest);
  for (Seam& seam : find_by_id(plan.weldments, longest)->seams) seam.balance.clear();
  open(plan);
  ASSERT_EQ(window->chain().link(DeskPage::cell).worst(), Severity::warn);
  const auto of = chain_figures(*window->evaluator().results())[position_of(DeskPage::cell)];
  ASSERT_TRUE(of.weldment);
  const std::string shown = plan.weldments[*of.weldment].id;
  EXPECT_NE(shown, longest);
  EXPECT_EQ(worst_found(Link::cell, {shown}), window->chain().link(DeskPage::cell).worst());
  EXPECT_TRUE(window->chain().link(DeskPage::cell).detail().endsWith(QString::fromStdString(shown)));
}

TEST_F(CountsTest, LineAndRecordsMarkWhatTheirListsHold) {
  auto& records = page_of<RecordsPage>(*window, DeskPage::records);
  records.importLogs({demo_log()});
  records.job().wait();
  ASSERT_TRUE(records.logs());
  EXPECT_EQ(list(DeskPage::records).tally().total(), static_cast<int>(records.logs()->audit.findings.size()))
      << "every finding of the logs is a record's";
  EXPECT_GE(window->chain().link(DeskPage::records).worst(), list(DeskPage::records).tally().worst());
  auto& line = page_of<LinePage>(*window, DeskPage::line);
  line.readOrders(QString::fromStdString(source_path("/reference/demo/orders.csv")));
  line.job().wait();
  ASSERT_TRUE(line.line());
  EXPECT_EQ(window->chain().link(DeskPage::line).worst(), list(DeskPage::line).tally().worst());
  const Tally found = FindingIndex(line.line()->findings).tally(Link::line);
  EXPECT_EQ(list(DeskPage::line).tally(), found);
}

}  // namespace
}  // namespace seamtakt::desk
