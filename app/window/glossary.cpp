#include "app/window/glossary.h"

#include "core/catalog/embedded.h"

#include <QCoreApplication>
#include <QDialog>
#include <QDialogButtonBox>
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <QLineEdit>
#include <QTextBrowser>
#include <QVBoxLayout>

#include <algorithm>

namespace sump {

namespace {

QString glossaryText(const char* source) {
  return QCoreApplication::translate("Glossary", source);
}

std::vector<GlossaryTerm> readGlossary() {
  const std::string_view raw = embeddedText("glossary/en.json");
  const QByteArray bytes(raw.data(), static_cast<qsizetype>(raw.size()));
  std::vector<GlossaryTerm> terms;
  for (const QJsonValue& value : QJsonDocument::fromJson(bytes)["terms"].toArray()) {
    GlossaryTerm term{value["term"].toString(), {}, value["meaning"].toString()};
    for (const QJsonValue& form : value["also"].toArray())
      term.also << form.toString();
    terms.push_back(std::move(term));
  }
  return terms;
}

/// Where the word stands by itself in the label, or -1.
qsizetype find(const QString& label, const QString& word) {
  const auto part = [&label](qsizetype at) {
    return at >= 0 && at < label.size() && (label[at].isLetterOrNumber() || label[at] == '-');
  };
  qsizetype at = -1;
  while ((at = label.indexOf(word, at + 1, Qt::CaseInsensitive)) >= 0) {
    if (!part(at - 1) && !part(at + word.size())) return at;
  }
  return -1;
}

struct Hit {
  qsizetype at, size;
  const GlossaryTerm* term;
};

/// Of the glossary's own table, in the window's language.
QString shown(const QString& english) {
  return QCoreApplication::translate("GlossaryTerms", english.toUtf8().constData());
}

QString sentence(const GlossaryTerm& term) {
  QString name = shown(term.term);
  name[0] = name[0].toUpper();
  return glossaryText("%1: %2.").arg(name, shown(term.meaning));
}

QString page(const QString& wanted) {
  QString html = "<dl>";
  for (const GlossaryTerm& term : glossary()) {
    const QString all = shown(term.term) + ' ' + term.also.join(' ') + ' ' + shown(term.meaning);
    if (!all.contains(wanted, Qt::CaseInsensitive)) continue;
    html += QString("<dt><b>%1</b></dt><dd>%2</dd>")
                .arg(shown(term.term).toHtmlEscaped(), shown(term.meaning).toHtmlEscaped());
  }
  return html + "</dl>";
}

} // namespace

const std::vector<GlossaryTerm>& glossary() {
  static const std::vector<GlossaryTerm> terms = readGlossary();
  return terms;
}

std::vector<const GlossaryTerm*> termsIn(const QString& label) {
  std::vector<Hit> hits;
  for (const GlossaryTerm& term : glossary()) {
    for (const QString& word : QStringList(term.term) + term.also) {
      const qsizetype at = find(label, word);
      if (at >= 0) hits.push_back({at, word.size(), &term});
    }
  }
  // The longer term first where two stand at one place.
  std::ranges::sort(hits, [](const Hit& a, const Hit& b) {
    return a.at != b.at ? a.at < b.at : a.size > b.size;
  });
  std::vector<const GlossaryTerm*> terms;
  qsizetype end = 0;
  for (const Hit& hit : hits) {
    if (hit.at < end) continue;
    end = hit.at + hit.size;
    if (std::ranges::find(terms, hit.term) == terms.end()) terms.push_back(hit.term);
  }
  return terms;
}

QString tipWithTerms(const QString& label, const QString& tip) {
  QStringList lines;
  if (!tip.isEmpty()) lines << tip;
  for (const GlossaryTerm* term : termsIn(label))
    lines << sentence(*term);
  if (lines.size() <= 1 && !tip.isEmpty()) return tip;
  QString html;
  for (const QString& line : lines)
    html += "<p>" + line.toHtmlEscaped() + "</p>"; // rich text, so that long lines are wrapped
  return html;
}

QDialog* glossaryDialog(QWidget* parent) {
  auto* dialog = new QDialog(parent);
  dialog->setAttribute(Qt::WA_DeleteOnClose);
  dialog->setWindowTitle(glossaryText("Words of the trade"));
  auto* column = new QVBoxLayout(dialog);
  auto* search = new QLineEdit(dialog);
  search->setObjectName("glossary-search");
  search->setAccessibleName(glossaryText("Word to look for"));
  search->setPlaceholderText(glossaryText("Word to look for"));
  search->setClearButtonEnabled(true);
  auto* browser = new QTextBrowser(dialog);
  browser->setObjectName("glossary");
  browser->setAccessibleName(glossaryText("Words of the trade"));
  browser->setHtml(page({}));
  QObject::connect(search, &QLineEdit::textChanged, browser,
                   [browser](const QString& wanted) { browser->setHtml(page(wanted)); });
  auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close, dialog);
  QObject::connect(buttons, &QDialogButtonBox::rejected, dialog, &QDialog::close);
  column->addWidget(search);
  column->addWidget(browser, 1);
  column->addWidget(buttons);
  dialog->resize(620, 640);
  return dialog;
}

} // namespace sump
