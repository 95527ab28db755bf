#pragma once
// The sheet set on the screen: pages in a list, one of them drawn, on any paper; printing and PDF.

#include "app/window/reviewer.h"
#include "core/sheet/page.h"

#include <QDialog>

#include <vector>

class QComboBox;
class QListWidget;
class QPrinter;
class QScrollArea;

namespace sump {

class PaperCanvas;

class SheetPreview : public QDialog {
  Q_OBJECT
public:
  /// Keeps the review: what is looked at does not change while it is printed.
  SheetPreview(ReviewedPtr reviewed, QWidget* parent);

  const std::vector<Page>& pages() const { return pages_; }
  /// Composes the set again for a paper size; tells in its place why it cannot.
  void setPaper(const QString& key);
  void showPage(int row);
  /// Prints the pages in the list that are ticked, each at its true size.
  bool printTo(QPrinter& printer) const;

protected:
  void showEvent(QShowEvent* event) override;

private:
  void fillPapers();
  void print();
  void savePdf();
  void zoom(double factor);
  std::vector<Page> ticked() const;

  ReviewedPtr reviewed_;
  std::vector<Page> pages_;
  QComboBox* papers_ = nullptr;
  QListWidget* list_ = nullptr;
  QScrollArea* scroll_ = nullptr;
  PaperCanvas* canvas_ = nullptr;
};

} // namespace sump
