// Nothing is cut and nothing overlaps: the visible content of each page, in each language and unit
// system, in a small window and in a large one.
#include <QComboBox>
#include <QHeaderView>
#include <QLabel>
#include <QTableView>

#include "app/theme_choice.hpp"
#include "models/words/unit_view.hpp"
#include "pages/line_page.hpp"
#include "pages/records_page.hpp"
#include "support/source_path.hpp"
#include "user_actions.hpp"

namespace seamtakt::desk {
namespace {

struct View {
  const char* language;
  UnitSystem units;
  QSize size;
};

std::string text_of(const View& view) {
  return std::string(view.language) + (view.units == UnitSystem::us ? ", US, " : ", SI, ") +
         std::to_string(view.size.width()) + " x " + std::to_string(view.size.height());
}

class RoomForTexts : public testing::TestWithParam<View> {
 protected:
  void SetUp() override {
    choose_language(GetParam().language);
    UnitView::shared().setSystem(GetParam().units);
    window_ = std::make_unique<MainWindow>();
    window_->resize(GetParam().size);
    window_->document().open(demo_path());
    window_->show();
    window_->evaluator().wait();
    window_->selection().explain(QStringLiteral("BD/S02/pass 1"), QStringLiteral("cooling_time_s"));
    auto& records = page_of<RecordsPage>(*window_, DeskPage::records);
    records.importLogs({demo_log()}, {});
    records.job().wait();
    auto& line = page_of<LinePage>(*window_, DeskPage::line);
    line.readOrders(QString::fromStdString(source_path("/reference/demo/orders.csv")));
    line.job().wait();
  }
  void TearDown() override {
    window_.reset();
    UnitView::shared().setSystem(UnitSystem::si);
    choose_language("en");
  }

  void show(DeskPage page) {
    window_->showPage(page);
    QApplication::processEvents();
    where_ = " on " + window_->page(page).title().toStdString() + " (" + text_of(GetParam()) + ")";
  }

  void expect_room(const QLabel& label) {
    ++seen_;
    if (label.wordWrap()) {
      EXPECT_GE(label.height(), label.heightForWidth(label.width())) << label.text().toStdString() << where_;
    } else {
      EXPECT_GE(label.width(), label.sizeHint().width()) << label.text().toStdString() << where_;
      EXPECT_GE(label.height(), label.sizeHint().height()) << label.text().toStdString() << where_;
    }
  }
  void expect_room(const QAbstractButton& button) {
    ++seen_;
    EXPECT_GE(button.width(), button.minimumSizeHint().width()) << button.text().toStdString() << where_;
    EXPECT_GE(button.height(), button.minimumSizeHint().height()) << button.text().toStdString() << where_;
  }
  void expect_room(const QHeaderView& header) {
    for (int i = 0; i < header.count(); ++i) {
      if (header.isSectionHidden(i)) continue;
      ++seen_;
      // The hint keeps room for the arrow of a sorted column; what must fit is the text.
      const QString text = header.model()->headerData(i, Qt::Horizontal).toString();
      const int width = header.fontMetrics().boundingRect({}, 0, text).width();
      EXPECT_GE(header.sectionSize(i), width + 4) << text.toStdString() << where_;
    }
  }
  void expect_apart(const QWidget& parent) {
    const auto children = parent.findChildren<QWidget*>(Qt::FindDirectChildrenOnly);
    for (qsizetype i = 0; i < children.size(); ++i)
      for (qsizetype k = i + 1; k < children.size(); ++k) {
        const QWidget &one = *children[i], &other = *children[k];
        if (!one.isVisible() || !other.isVisible() || one.isWindow() || other.isWindow()) continue;
        EXPECT_FALSE(one.geometry().intersects(other.geometry()))
            << name_of(one) << " and " << name_of(other) << where_;
      }
  }
  static std::string name_of(const QWidget& widget) {
    return widget.metaObject()->className() + (" " + widget.accessibleName().toStdString());
  }

  std::unique_ptr<MainWindow> window_;
  std::string where_;
  int seen_ = 0;
};

TEST_P(RoomForTexts, IsThereOnEveryPage) {
  EXPECT_EQ(window_->size(), GetParam().size) << "the pages need a larger window";
  for (const DeskPage page : desk_pages) {
    show(page);
    for (const QLabel* label : window_->findChildren<QLabel*>())
      if (label->isVisible() && !label->text().isEmpty()) expect_room(*label);
    for (const QAbstractButton* button : window_->findChildren<QAbstractButton*>())
      if (button->isVisible() && !button->text().isEmpty()) expect_room(*button);
    for (const QTableView* table : window_->findChildren<QTableView*>())
      if (table->isVisible() && table->horizontalHeader()->isVisible())
        expect_room(*table->horizontalHeader());
    for (const QWidget* widget : window_->findChildren<QWidget*>())
      if (widget->isVisible() && widget->layout()) expect_apart(*widget);
  }
  EXPECT_GT(seen_, 250);
}

INSTANTIATE_TEST_SUITE_P(InEveryView, RoomForTexts,
                         testing::Values(View{"en", UnitSystem::si, {1280, 800}},
                                         View{"de", UnitSystem::us, {1280, 800}},
                                         View{"en", UnitSystem::us, {2560, 1440}},
                                         View{"de", UnitSystem::si, {2560, 1440}}),
                         [](const auto& info) {
                           return std::string(info.param.language) + std::to_string(info.param.size.width());
                         });

}  // namespace
}  // namespace seamtakt::desk
