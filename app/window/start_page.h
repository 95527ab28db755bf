#pragma once
// What the window shows before there is a plan: ways to begin.

#include <QWidget>

class QVBoxLayout;

namespace sump {

class StartPage : public QWidget {
  Q_OBJECT

public:
  explicit StartPage(QWidget* parent = nullptr);
  void setRecent(const QStringList& files);

signals:
  void emptyWanted();
  void guidedWanted();
  void openWanted();
  /// `:/samples/...`; samples open as copies, so that they stay as they are.
  void sampleWanted(const QString& resource);
  void recentWanted(const QString& file);

protected:
  void changeEvent(QEvent* event) override;

private:
  void drawIcons();
  QVBoxLayout* recent_ = nullptr;
};

} // namespace sump
