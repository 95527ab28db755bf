#pragma once
// Accepting a finding with a written reason, as plain edits and one small dialog.

#include "core/plan/plan.h"

#include <QDialog>

#include <optional>
#include <string_view>

class QLineEdit;
class QPlainTextEdit;

namespace sump {

class FieldNote;

/// The acceptance of the finding with this key; null when nobody accepted it.
const Acceptance* acceptanceOf(const Plan& plan, std::string_view finding);
/// Adds it, or replaces the earlier one of the same finding.
Plan withAcceptance(Plan plan, Acceptance acceptance);
Plan withoutAcceptance(Plan plan, std::string_view finding);

/// Asks who accepts a finding, and why. Neither may be left empty.
class AcceptanceDialog : public QDialog {
  Q_OBJECT

public:
  AcceptanceDialog(const QString& finding, const QString& name, QWidget* parent = nullptr);
  QString reason() const;
  QString name() const;

private:
  void tryAccept();

  QPlainTextEdit* reason_ = nullptr;
  QLineEdit* name_ = nullptr;
  FieldNote *reasonNote_ = nullptr, *nameNote_ = nullptr;
};

} // namespace sump
