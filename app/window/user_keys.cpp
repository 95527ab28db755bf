#include "app/window/user_keys.h"

#include <QSettings>

namespace sump {

namespace {

constexpr const char* kGroup = "keys";

QString settingOf(const QString& action) {
  return QString("%1/%2").arg(kGroup, action);
}

} // namespace

bool hasUserKeys(const QString& action) {
  return QSettings().contains(settingOf(action));
}

QList<QKeySequence> userKeys(const QString& action) {
  const QString text = QSettings().value(settingOf(action)).toString();
  return text.isEmpty() ? QList<QKeySequence>()
                        : QKeySequence::listFromString(text, QKeySequence::PortableText);
}

void setUserKeys(const ActionRow& row, const QList<QKeySequence>& keys) {
  if (keys == usualKeysOf(row)) {
    forgetUserKeys(row.name);
    return;
  }
  QSettings().setValue(settingOf(row.name),
                       QKeySequence::listToString(keys, QKeySequence::PortableText));
}

void forgetUserKeys(const QString& action) {
  QSettings().remove(settingOf(action));
}

void forgetAllUserKeys() {
  QSettings().remove(kGroup);
}

const ActionRow* ownerOf(const QKeySequence& key, const ActionRow& besides) {
  for (const ActionRow& row : actionTable()) {
    if (row.id != besides.id && keysOf(row).contains(key)) return &row;
  }
  return nullptr;
}

} // namespace sump
