#pragma once
// Above the drawing: what the tool in use offers to choose, and what to do next.

#include "app/canvas/tools/tool.h"

#include <QWidget>

class QHBoxLayout;

namespace sump {

class QuietLabel;

class ToolStrip : public QWidget {
  Q_OBJECT

public:
  explicit ToolStrip(QWidget* parent = nullptr);
  /// Shows the tool's choices; the tool must live until the next show() or release().
  void show(Tool& tool);
  /// Forgets the tool, which is about to go.
  void release() { tool_ = nullptr; }
  void setHint(const QString& hint);

private:
  void fill();

  Tool* tool_ = nullptr;
  std::vector<Choice> shown_;
  QWidget* choices_ = nullptr;
  QuietLabel* hint_ = nullptr;
};

} // namespace sump
