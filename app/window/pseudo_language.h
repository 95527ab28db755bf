#pragma once
// A language of no country, for trying the window: every text two fifths longer and accented, so
// that what is cut off, or has not gone through the translation, can be seen.

#include <QTranslator>

namespace sump {

/// The text with accents and about 40 % more letters. Places for values (`%1`, `{size}`), mnemonics
/// (`&`), entities and tags stay as they are.
QString pseudoText(const QString& text);

class PseudoTranslator : public QTranslator {
  Q_OBJECT

public:
  using QTranslator::QTranslator;
  QString translate(const char* context, const char* source, const char* disambiguation,
                    int n) const override;
  bool isEmpty() const override { return false; }
};

/// For the application, when the environment has SUMPWRIGHT_PSEUDO set.
void installPseudoLanguageIfAsked();

} // namespace sump
