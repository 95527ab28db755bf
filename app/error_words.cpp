// What is wrong with a file, told to somebody who never looks into one: where, what, how to mend
// it.

#include "app/core_text.h"

#include "core/exchange/input_error.h"

#include <QCoreApplication>
#include <QDir>

namespace sump {

namespace {

QString text(const char* source) {
  return QCoreApplication::translate("ErrorWords", source);
}

/// `vaults` is a list, `vault 2` a thing of it.
QString singular(QString word) {
  if (word.endsWith("ies")) return word.chopped(3) + 'y';
  if (word.endsWith("shes")) return word.chopped(2);
  return word.endsWith('s') && !word.endsWith("ss") ? word.chopped(1) : word;
}

/// `lidThickness` as `lid thickness`, in words that the window uses.
QString stepWords(const QString& key) {
  if (key == "runs") return "lines";
  if (key == "vertices") return "corners";
  if (key == "from") return "start";
  if (key == "to") return "end";
  if (key == "at") return "place";
  QString words;
  for (const QChar c : key) {
    if (c.isUpper()) words += ' ';
    words += c.toLower();
  }
  return words;
}

/// `/vaults/0/length` as `Vault 1, length`.
QString placeWords(const std::string& pointer) {
  QStringList steps;
  QString list;
  for (const QString& step : QString::fromStdString(pointer).split('/', Qt::SkipEmptyParts)) {
    bool counted = false;
    const int index = step.toInt(&counted);
    if (counted && !steps.isEmpty()) {
      steps.last() = coreText(singular(list).toStdString()) + QString(" %1").arg(index + 1);
      continue;
    }
    list = stepWords(step);
    steps << coreText(list.toStdString());
  }
  return sentenceCase(steps.join(", "));
}

/// What the reader of the file says to people who write such files by hand.
struct Trouble {
  QString what, mend;
};
Trouble troubleOf(const InputError& error) {
  const bool noPlan = error.pointer == "/format" || error.problem.starts_with("is not a plan");
  if (noPlan) {
    return {text("is not a Sumpwright plan"),
            text("choose a file that was saved by Sumpwright; its name ends in .sump")};
  }
  if (error.problem.starts_with("is not JSON")) {
    return {text("cannot be read from this line on"),
            text("open an older copy of it, or mend the text at this line")};
  }
  return {coreFilled(error.problem), coreFilled(error.mend)};
}

QString inputWords(const InputError& error) {
  QString where = QDir::toNativeSeparators(QString::fromStdString(error.file));
  if (error.line > 0) where = text("%1, line %2").arg(where).arg(error.line);
  const Trouble trouble = troubleOf(error);
  const QString place = error.pointer == "/format" ? QString() : placeWords(error.pointer);
  QString all = place.isEmpty() ? where + ": " + trouble.what + "."
                                : where + "\n" + place + ": " + trouble.what + ".";
  if (!trouble.mend.isEmpty()) all += "\n\n" + text("To mend it: %1.").arg(trouble.mend);
  return all;
}

} // namespace

QString errorWords(const std::exception& error) {
  const auto* input = dynamic_cast<const InputError*>(&error);
  return input == nullptr ? coreFilled(error.what()) : inputWords(*input);
}

} // namespace sump
