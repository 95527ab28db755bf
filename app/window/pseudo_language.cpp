#include "app/window/pseudo_language.h"

#include <QCoreApplication>
#include <QHash>

namespace sump {

namespace {

constexpr double kLonger = 0.4;

QChar accented(QChar c) {
  static const QString plain = "aceiknorsuyzACDEGINORSUYZ";
  static const QString other = "åçéîķñöŕšûýžÅÇĎÉĞÎÑÖŔŠÛÝŽ";
  const qsizetype at = plain.indexOf(c);
  return at < 0 ? c : other[at];
}

/// Length of what must stay as it is at this place: `%1`, `%L2`, `%n`, `{size}`, `<b>`, `&amp;`,
/// `&F`'s `&`, patterns of file names such as `(*.sump)`, and what the guide sets as code between
/// backticks.
qsizetype fixedLength(const QString& text, qsizetype at) {
  const QChar c = text[at];
  if (c == '%') {
    qsizetype end = at + 1;
    if (end < text.size() && text[end] == 'L') ++end;
    while (end < text.size() && text[end].isDigit())
      ++end;
    if (end == at + 1 && end < text.size() && text[end] == 'n') ++end;
    return end - at;
  }
  if (c == '{') {
    const qsizetype end = text.indexOf('}', at);
    return end < 0 ? 1 : end + 1 - at;
  }
  if (c == '<') {
    const qsizetype end = text.indexOf('>', at);
    return end < 0 || (at + 1 < text.size() && text[at + 1].isSpace()) ? 1 : end + 1 - at;
  }
  if (text.mid(at, 4) == " (*." || text.mid(at, 3) == "(*.") {
    const qsizetype end = text.indexOf(')', at);
    return end < 0 ? 1 : end + 1 - at;
  }
  if (c == '`') {
    const qsizetype end = text.indexOf('`', at + 1);
    return end < 0 ? 1 : end + 1 - at;
  }
  if (c == '&') {
    const qsizetype end = text.indexOf(';', at);
    const bool entity = end > at + 1 && end <= at + 7 && !text.mid(at, end - at).contains(' ');
    return entity ? end + 1 - at : 1;
  }
  return 0;
}

} // namespace

QString pseudoText(const QString& text) {
  QString out;
  double owed = 0;
  bool hotkey = false;
  const auto payWithDots = [&] { // words without vowels, figures and units
    while (owed >= 0.5 && !out.isEmpty()) {
      out += QChar(0x02D9); // a raised dot
      owed -= 1;
    }
  };
  for (qsizetype i = 0; i < text.size();) {
    const qsizetype fixed = fixedLength(text, i);
    if (fixed > 0) {
      if (text.mid(i, 3) == " (*") payWithDots(); // a pattern of file names is the last of its text
      hotkey = fixed == 1 && text[i] == '&';
      out += text.mid(i, fixed);
      i += fixed;
      continue;
    }
    const QChar c = text[i++];
    out += hotkey ? c : accented(c); // the key that it is reached by stays on the keyboard
    owed += kLonger;
    const bool vowel = QString("aeiouyAEIOUY").contains(c);
    while (vowel && !hotkey && owed >= 1) {
      out += accented(c.toLower());
      owed -= 1;
    }
    hotkey = false;
  }
  payWithDots();
  return out;
}

QString PseudoTranslator::translate(const char*, const char* source, const char*, int) const {
  return pseudoText(QString::fromUtf8(source));
}

void installPseudoLanguageIfAsked() {
  if (qEnvironmentVariableIsEmpty("SUMPWRIGHT_PSEUDO")) return;
  QCoreApplication::installTranslator(new PseudoTranslator(QCoreApplication::instance()));
}

} // namespace sump
