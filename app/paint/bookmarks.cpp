#include "app/paint/bookmarks.h"

// Without it qpdf 11 warns that its pointers changed; 4 takes standard pointers only.
#define POINTERHOLDER_TRANSITION 4
#include <qpdf/QPDF.hh>
#include <qpdf/QPDFWriter.hh>

#include <algorithm>

namespace sump {

namespace {

using Handle = QPDFObjectHandle;

/// Of a sheet number such as `P-101`; empty for any other page number.
std::string discipline(const std::string& number) {
  switch (number.size() > 1 && number[1] == '-' ? number.front() : ' ') {
  case 'G':
    return "General";
  case 'C':
    return "Site work";
  case 'P':
    return "Plumbing";
  case 'E':
    return "Electrical";
  default:
    return {};
  }
}

Handle entry(QPDF& pdf, const std::string& title, Handle page) {
  Handle item = pdf.makeIndirectObject(Handle::newDictionary());
  item.replaceKey("/Title", Handle::newUnicodeString(title));
  item.replaceKey("/Dest", Handle::newArray({page, Handle::newName("/Fit")}));
  return item;
}

/// Links the children of one outline level to each other and to their parent (ISO 32000-1,
/// 12.3.3). A positive count shows them open.
void adopt(Handle parent, std::vector<Handle>& children) {
  for (std::size_t i = 0; i < children.size(); ++i) {
    children[i].replaceKey("/Parent", parent);
    if (i > 0) children[i].replaceKey("/Prev", children[i - 1]);
    if (i + 1 < children.size()) children[i].replaceKey("/Next", children[i + 1]);
  }
  parent.replaceKey("/First", children.front());
  parent.replaceKey("/Last", children.back());
}

void addBookmarks(QPDF& pdf, const std::vector<Page>& pages) {
  const std::vector<Handle> sheets = pdf.getAllPages();
  std::vector<Handle> groups;
  std::vector<std::vector<Handle>> members;
  std::string last;
  std::size_t shown = 0; // under groups
  for (std::size_t i = 0; i < std::min(pages.size(), sheets.size()); ++i) {
    const std::string title = pages[i].number + "  " + pages[i].title;
    const std::string group = discipline(pages[i].number);
    if (group.empty()) { // a page of a report stands for itself
      groups.push_back(entry(pdf, title, sheets[i]));
      members.emplace_back();
      last.clear();
      continue;
    }
    if (group != last) {
      groups.push_back(entry(pdf, group, sheets[i]));
      members.emplace_back();
      last = group;
    }
    members.back().push_back(entry(pdf, title, sheets[i]));
    ++shown;
  }
  if (groups.empty()) return;
  Handle root = pdf.makeIndirectObject(Handle::newDictionary());
  root.replaceKey("/Type", Handle::newName("/Outlines"));
  adopt(root, groups);
  for (std::size_t i = 0; i < groups.size(); ++i) {
    if (members[i].empty()) continue;
    adopt(groups[i], members[i]);
    groups[i].replaceKey("/Count", Handle::newInteger(static_cast<long long>(members[i].size())));
  }
  root.replaceKey("/Count", Handle::newInteger(static_cast<long long>(groups.size() + shown)));
  pdf.getRoot().replaceKey("/Outlines", root);
  pdf.getRoot().replaceKey("/PageMode", Handle::newName("/UseOutlines"));
}

} // namespace

QByteArray withBookmarks(const QByteArray& bytes, const std::vector<Page>& pages,
                         const Project& project) {
  QPDF pdf;
  pdf.processMemoryFile("sheets", bytes.constData(), static_cast<std::size_t>(bytes.size()));
  addBookmarks(pdf, pages);
  Handle info = pdf.getTrailer().getKey("/Info");
  if (info.isDictionary()) info.replaceKey("/Author", Handle::newUnicodeString(project.createdBy));
  QPDFWriter writer(pdf);
  writer.setOutputMemory();
  writer.write();
  const auto buffer = writer.getBufferSharedPointer();
  return QByteArray(reinterpret_cast<const char*>(buffer->getBuffer()),
                    static_cast<qsizetype>(buffer->getSize()));
}

} // namespace sump
