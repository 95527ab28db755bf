#include "app/window/guide.h"

#include <QCoreApplication>
#include <QRegularExpression>
#include <QUrl>

namespace sump {

namespace {

QString words(const QString& english) {
  if (english.trimmed().isEmpty()) return english;
  return QCoreApplication::translate("Guide", english.simplified().toUtf8().constData());
}

QString rowInWords(const QString& row) {
  static const QRegularExpression rule("^[|: -]*$");
  if (rule.match(row).hasMatch()) return row;
  QStringList cells = row.split('|');
  for (QString& cell : cells) {
    if (!cell.trimmed().isEmpty()) cell = ' ' + words(cell) + ' ';
  }
  return cells.join('|');
}

/// Lines up to the next that begins with `1. ` or `- ` are one item.
QString listInWords(const QStringList& lines) {
  static const QRegularExpression mark("^(\\d+\\. |- )");
  QStringList items;
  for (const QString& line : lines) {
    if (mark.match(line).hasMatch() || items.isEmpty()) {
      items << line;
    } else {
      items.last() += ' ' + line.trimmed();
    }
  }
  for (QString& item : items) {
    const qsizetype text = mark.match(item).capturedLength();
    item = item.left(text) + words(item.mid(text));
  }
  return items.join('\n');
}

QString blockInWords(const QString& block) {
  static const QRegularExpression heading("^(#+ )(.*)$"), picture("^!\\[(.*)\\](\\(.*\\))$"),
      list("^(\\d+\\. |- )");
  const QString trimmed = block.trimmed();
  if (const auto match = heading.match(trimmed); match.hasMatch())
    return match.captured(1) + words(match.captured(2));
  if (const auto match = picture.match(trimmed); match.hasMatch())
    return "![" + words(match.captured(1)) + "]" + match.captured(2);
  QStringList lines = trimmed.split('\n');
  if (list.match(trimmed).hasMatch()) return listInWords(lines);
  if (!trimmed.startsWith('|')) return words(trimmed);
  for (QString& line : lines)
    line = rowInWords(line);
  return lines.join('\n');
}

} // namespace

QString guideInWords(const QString& markdown) {
  QStringList blocks = markdown.split("\n\n", Qt::SkipEmptyParts);
  for (QString& block : blocks)
    block = blockInWords(block);
  return blocks.join("\n\n") + '\n';
}

GuideBrowser::GuideBrowser(QWidget* parent) : QTextBrowser(parent) {
  setObjectName("guide");
  // Read as a source, so that its pictures are found beside it.
  setSource(QUrl("qrc:/guide/guide.md"), QTextDocument::MarkdownResource);
}

QVariant GuideBrowser::loadResource(int type, const QUrl& name) {
  const QVariant found = QTextBrowser::loadResource(type, name);
  if (type != QTextDocument::MarkdownResource) return found;
  return guideInWords(QString::fromUtf8(found.toByteArray()));
}

} // namespace sump
