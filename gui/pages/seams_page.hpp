#pragma once

#include "pages/page.hpp"

class QButtonGroup;
class QComboBox;
class QStackedWidget;
class QToolButton;

namespace seamtakt::desk {

class AxonometricView;
struct DrawnSeam;
class FieldForm;
struct FieldGroup;
class GridView;
class SeamModel;
class SeamView;
class ValueModel;
enum class Projection;

/// Weldments and seams: the table, the form of one seam, where it is, in space or in plan and elevation, and
/// what each pass gives.
class SeamsPage : public Page {
  Q_OBJECT

 public:
  explicit SeamsPage(const Desk& desk, QWidget* parent = nullptr);
  void setResults(const ResultsPtr& results) override;
  bool goTo(const QString& address, const QString& key) override;

  GridView& table() { return *table_; }
  FieldForm& form() { return *form_; }
  /// In plan and elevation, of all seams of the table.
  SeamView& picture() { return *picture_; }
  /// In space, of the weldment whose seam is chosen.
  AxonometricView& space() { return *space_; }
  void showSpace();
  void showFlat(Projection projection);

 public slots:
  void addSeam();
  void duplicateSeam();
  void removeSeam();
  void addWeldment();
  void showWeldmentFields();
  /// Asks calc for settings inside all limits for the selected seams.
  void fitSelected();
  /// Offers the plan's schedules for the chosen seam, those that fit first; all selected seams get it.
  void chooseSchedule();

 protected:
  void addToMenu(GridView& table, QMenu& menu, const QModelIndex& at) override;

 private:
  QWidget* makeWhat();
  QWidget* makeWhy();
  void makeTools();
  void makeViewTools();
  void fillWeldments();
  void showFirstStep();
  void showSeam();
  void showPasses();
  void draw();
  void drawSpace(const std::vector<DrawnSeam>& rows);
  void insert(const Seam& seam, const QString& what);
  std::vector<std::string> selectedSeams() const;

  SeamModel* model_;
  ValueModel* passes_;
  GridView *table_, *pass_table_;
  FieldForm* form_;
  SeamView* picture_;
  AxonometricView* space_;
  QStackedWidget* pictures_;
  QButtonGroup* views_;
  QComboBox *weldments_, *meaning_;
  QToolButton* weldment_fields_;
  std::size_t drawn_weldment_ = 0;  ///< whose picture in space is shown
};

/// The groups of a seam's form.
std::vector<FieldGroup> seam_form_groups();
std::vector<FieldGroup> weldment_form_groups();

}  // namespace seamtakt::desk
