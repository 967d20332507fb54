#pragma once

#include "pages/page.hpp"

class QComboBox;
class QToolButton;

namespace seamtakt::desk {

class FieldForm;
struct FieldGroup;
class GridView;
class SeamModel;
class SeamView;
class ValueModel;

/// Weldments and seams: the table, the form of one seam, where it is, and what each pass gives.
class SeamsPage : public Page {
  Q_OBJECT

 public:
  explicit SeamsPage(const Desk& desk, QWidget* parent = nullptr);
  void setResults(const ResultsPtr& results) override;
  bool goTo(const QString& address, const QString& key) override;

  GridView& table() { return *table_; }
  FieldForm& form() { return *form_; }
  SeamView& picture() { return *picture_; }

 public slots:
  void addSeam();
  void duplicateSeam();
  void removeSeam();
  void addWeldment();

 private:
  QWidget* makeWhat();
  QWidget* makeWhy();
  void makeTools();
  void fillWeldments();
  void showSeam();
  void showPasses();
  void draw();
  void insert(const Seam& seam, const QString& what);

  SeamModel* model_;
  ValueModel* passes_;
  GridView *table_, *pass_table_;
  FieldForm* form_;
  SeamView* picture_;
  QComboBox *weldments_, *meaning_;
  QToolButton* weldment_fields_;
};

/// The groups of a seam's form.
std::vector<FieldGroup> seam_form_groups();
std::vector<FieldGroup> weldment_form_groups();

}  // namespace seamtakt::desk
