#pragma once
// Docks behind another one's tab count as visible for Qt: what stands in them would be brought up
// to date at every step of a drag, and nobody would see it.

class QDockWidget;
class QWidget;

namespace sump {

/// What stands in a dock and is brought up to date only while it can be seen.
class Fronted {
public:
  virtual ~Fronted() = default;
  /// The dock came to the front of its tabs, or was opened.
  virtual void cameToFront() = 0;
};

/// True if the user can see it, as far as its place and its tab are concerned.
bool isInFront(const QWidget& widget);

/// Tells the content, if it is Fronted, whenever its dock comes to the front.
void tellWhenInFront(QDockWidget& dock, QWidget* content);

} // namespace sump
