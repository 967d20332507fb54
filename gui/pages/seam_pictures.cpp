// The pictures of the page of seams: in space, in plan and elevation.
#include <QButtonGroup>
#include <QHBoxLayout>
#include <QMenu>
#include <QStackedWidget>
#include <QToolButton>

#include "exchange/picture/weldment_svg.hpp"
#include "models/tables/seam_model.hpp"
#include "models/words/unit_view.hpp"
#include "pages/seams_page.hpp"
#include "plots/axonometric_view.hpp"
#include "plots/seam_view.hpp"

namespace seamtakt::desk {

/// The picture in space, with its six views as a menu, or seams alone in plan and elevation.
void SeamsPage::makeViewTools() {
  views_ = new QButtonGroup(this);
  const QString names[] = {tr("3D"), tr("Plan"), tr("Front"), tr("Side")};
  for (int i = 0; i < 4; ++i) {
    auto* view = new QToolButton(this);
    view->setText(names[i]);
    view->setAccessibleName(tr("View: %1").arg(names[i]));
    view->setCheckable(true);
    view->setChecked(i == 0);
    views_->addButton(view, i);
    tools().addWidget(view);
    if (i > 0) continue;
    auto* menu = new QMenu(view);
    menu->addActions(space_->viewActions());
    connect(menu, &QMenu::triggered, this, &SeamsPage::showSpace);
    view->setMenu(menu);
    view->setPopupMode(QToolButton::MenuButtonPopup);
  }
  connect(views_, &QButtonGroup::idClicked, this,
          [this](int id) { id == 0 ? showSpace() : showFlat(static_cast<Projection>(id - 1)); });
}

void SeamsPage::showSpace() {
  views_->button(0)->setChecked(true);
  pictures_->setCurrentWidget(space_);
}

void SeamsPage::showFlat(Projection projection) {
  views_->button(static_cast<int>(projection) + 1)->setChecked(true);
  picture_->setProjection(projection);
  pictures_->setCurrentWidget(picture_);
}

void SeamsPage::drawSpace(const std::vector<DrawnSeam>& rows) {
  const SeamPlace at = desk_.selection.seam();
  const PlanPtr plan = desk_.document.plan();
  drawn_weldment_ = at.weldment;
  space_->setWeldment(plan, at.weldment);
  if (at.weldment >= plan->weldments.size()) return space_->setSeams({});
  const Weldment& weldment = plan->weldments[at.weldment];
  std::vector<DrawnSeam> seams(weldment.seams.size());
  for (std::size_t row = 0; row < rows.size(); ++row)
    if (const SeamPlace& place = model_->place(static_cast<int>(row));
        place.weldment == at.weldment && place.seam < seams.size())
      seams[place.seam] = rows[row];
  if (results() && results()->plan == plan) {
    const std::vector<SeamMark> marks = seam_marks(weldment, results()->findings);
    for (std::size_t i = 0; i < seams.size(); ++i) {
      const SeamMark& mark = marks[i];
      if (mark.severity != Severity::fail || !mark.value || !mark.limit) continue;
      const UnitView& view = UnitView::shared();
      seams[i].figures = tr("%1 of %2")
                             .arg(view.numberText(*mark.value, mark.unit.c_str(), 3),
                                  view.quantityText(*mark.limit, mark.unit.c_str(), 3));
    }
  }
  space_->setSeams(std::move(seams));
  space_->setPicked(static_cast<int>(at.seam));
}

}  // namespace seamtakt::desk
