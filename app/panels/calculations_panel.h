#pragma once
// 'How it works out': every calculation of the newest review with formula, inputs, steps, result
// and source; of the whole plan or of what is selected in the drawing. Its head sums up the
// selected object.

#include "app/panels/calculation_page.h"
#include "app/panels/in_front.h"
#include "app/window/document.h"

#include <QTimer>
#include <QWidget>

#include <optional>
#include <set>

class QCheckBox;
class QLabel;
class QLineEdit;
class QTextBrowser;
class QUrl;

namespace sump {

class CalculationTree;

class CalculationsPanel : public QWidget, public Fronted {
  Q_OBJECT

public:
  /// `document` must outlive the panel.
  explicit CalculationsPanel(Document& document, QWidget* parent = nullptr);
  /// What is selected in the drawing.
  void setSelection(const std::set<Id>& objects);
  /// Opens a calculation by its number; false when there is none.
  bool open(const std::string& number);
  /// Numbers of the calculations listed, in their order.
  std::vector<std::string> listed() const;
  /// Number of the calculation or section on the page; empty when nothing is listed.
  const std::string& current() const { return current_; }

  /// Shows the note that the figures are old when they are.
  void tellIfStale();
  void cameToFront() override;

signals:
  /// A figure of 'What we know' is wanted (BasisItem::key).
  void knowWanted(const std::string& key);
  void objectWanted(const std::set<sump::Id>& objects);

protected:
  void showEvent(QShowEvent* event) override;
  void changeEvent(QEvent* event) override;

private:
  void makeHead();
  QWidget* makeList();
  QWidget* makePage();
  void documentChanged();
  void reviewArrived();
  /// All that takes long, worked out of one review.
  struct Worked {
    ReviewedPtr reviewed;
    CalculationOutline outline{{}};
    std::vector<BasisGroup> groups; ///< of 'What we know'
    QStringList names;              ///< of the plan's objects
    KeptWords kept;                 ///< for sentences with these names
  };
  static Worked workOut(const ReviewedPtr& reviewed, const Catalog& catalog);
  void refresh();
  void take(Worked worked);
  bool isBehind() const {
    return !worked_.reviewed || worked_.reviewed->revision != document_.revision();
  }
  void list();
  void choose();
  bool passes(const NumberedCalculation& entry) const;
  bool filtered() const;
  void showSummary();
  void showPage();
  void follow(const QUrl& url);
  PageSource source() const;

  Document& document_;
  Worked worked_;
  ReviewedPtr asked_; ///< being worked out, or the one that is shown
  QString html_;      ///< on the page
  std::set<Id> selection_;
  std::vector<CalculationSection> listed_; ///< what passes, of the outline
  std::string current_;                    ///< number of the calculation or section on the page
  /// Id and object of the calculation on the page, or nothing and the title of the section; by
  /// these it is found again when numbers change.
  std::pair<std::string, std::string> wanted_;
  QTimer stale_;
  QLabel* summary_ = nullptr;
  QLabel* staleNote_ = nullptr;
  QLineEdit* words_ = nullptr;
  QCheckBox* only_ = nullptr;
  CalculationTree* tree_ = nullptr;
  QTextBrowser* page_ = nullptr;
};

} // namespace sump
