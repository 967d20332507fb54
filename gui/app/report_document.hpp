#pragma once

#include <QTextDocument>

#include "exchange/sheets/report_model.hpp"

namespace seamtakt::desk {

/// A report laid out for paper: all of it is built from the report's blocks, and text stays plain text, in
/// the language and units of a view.
/// Drawings are painted as vectors.
class ReportDocument : public QTextDocument {
 public:
  /// Whether the report's title is at its head; it is in the document's properties in any case.
  enum class Title { shown, none };
  ReportDocument(const Report& report, const TextView& view, Title title = Title::shown);

  /// Lays it out as one tall page of `device`'s width. Tables that would be wider, since no number in them is
  /// broken, are set in smaller type.
  void layOut(QPaintDevice& device);
  /// The same, of this width in the device's dots.
  void layOut(QPaintDevice& device, double width);

  static QFont font();

 protected:
  /// No file and no address is opened, whatever the text says.
  QVariant loadResource(int type, const QUrl& name) override;
};

}  // namespace seamtakt::desk
