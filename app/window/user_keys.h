#pragma once
// The keys that the user chose in place of the table's, kept in the settings by action name.

#include "app/actions.h"

#include <QString>

namespace sump {

/// Empty when the user took the key away; nothing when the table's keys stand.
bool hasUserKeys(const QString& action);
QList<QKeySequence> userKeys(const QString& action);
/// Keys that are the table's own are no choice and are not kept.
void setUserKeys(const ActionRow& row, const QList<QKeySequence>& keys);
void forgetUserKeys(const QString& action);
void forgetAllUserKeys();

/// The other action that has this key already; null when it is free.
const ActionRow* ownerOf(const QKeySequence& key, const ActionRow& besides);

} // namespace sump
