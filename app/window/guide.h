#pragma once
// The user guide in the window's language: one Markdown document (resources/guide/guide.md), looked
// up paragraph by paragraph under the context `Guide`.

#include <QString>
#include <QTextBrowser>

namespace sump {

/// The document with each heading, paragraph, item of a list, cell of a table and name of a picture
/// looked up by its English text, without line breaks and marks; files of pictures stay.
QString guideInWords(const QString& markdown);

/// Shows the guide; its pictures are found beside it.
class GuideBrowser : public QTextBrowser {
  Q_OBJECT

public:
  explicit GuideBrowser(QWidget* parent = nullptr);

protected:
  QVariant loadResource(int type, const QUrl& name) override;
};

} // namespace sump
