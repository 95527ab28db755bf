#include "app/panels/finding_rows.h"

#include "app/core_text.h"

#include "app/panels/findings_panel.h"
#include "app/plain_text.h"

namespace sump {

namespace {

QString severityWord(Severity severity) {
  switch (severity) {
  case Severity::Error:
    return FindingsPanel::tr("Error");
  case Severity::Warning:
    return FindingsPanel::tr("Warning");
  case Severity::Note:
    break;
  }
  return FindingsPanel::tr("Note");
}

TableRow rowOf(const Finding& finding) {
  TableRow row;
  QStringList objects;
  for (const Id& id : finding.objects)
    objects << q(id);
  const QString what = messageText(finding.what);
  row.cells << (finding.accepted ? FindingsPanel::tr("Accepted") : severityWord(finding.severity))
            << what << coreFilled(finding.measured.value_or(""))
            << coreFilled(finding.required.value_or("")) << objects.join(", ");
  row.objects = std::set<Id>(finding.objects.begin(), finding.objects.end());
  row.tip = QString("<p>%1</p><p>%2</p>")
                .arg(what.toHtmlEscaped(), messageText(finding.mend).toHtmlEscaped());
  return row;
}

} // namespace

std::vector<TableRow> findingRows(const Review& review) {
  std::vector<TableRow> rows;
  rows.reserve(review.findings.size());
  for (const Finding& finding : review.findings)
    rows.push_back(rowOf(finding));
  return rows;
}

} // namespace sump
