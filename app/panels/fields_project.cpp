// Title block, units, site and limits.

#include "app/panels/corner_fields.h"

#include "app/core_text.h"

#include "core/plan/edits_group.h"
#include "core/plan/edits_objects.h"

namespace sump {

namespace {

Place<Project> projectPlace() {
  return {[](const Plan& plan) { return plan.project; },
          [](const Plan& plan, Project value) {
            Plan next = plan;
            next.project = std::move(value);
            return next;
          }};
}

Place<Site> sitePlace() {
  return {[](const Plan& plan) { return plan.site; },
          [](const Plan& plan, Site value) {
            Plan next = plan;
            next.site = std::move(value);
            return next;
          }};
}

void titleFields(const FieldContext& context, std::vector<Field>& out) {
  FieldMaker<Project> make(context.plan, projectPlace(), out);
  make.heading(fieldText("Title block"));
  const auto line = [&make](const char* label, std::string Project::*member, const char* tip = "") {
    make.typed<std::string>(
        fieldText(label), [member](Project& p) -> std::string& { return p.*member; }, textWriting(),
        fieldText(tip));
  };
  line("Title", &Project::title);
  line("Second title", &Project::supplementaryTitle);
  line("Owner", &Project::legalOwner);
  line("Site address", &Project::siteAddress);
  line("Drawing number", &Project::identificationNumber);
  line("Revision", &Project::revision);
  line("Date of issue", &Project::issueDate, "Year-month-day");
  line("Drawn by", &Project::createdBy);
  line("Approved by", &Project::approvedBy);
  line("Status", &Project::documentStatus);
  make.choice<UnitSystem>(
      fieldText("Units"), [](Project& p) -> UnitSystem& { return p.units; },
      {UnitSystem::UsCustomary, UnitSystem::Metric},
      {fieldText("Feet and inches"), fieldText("Metres")},
      fieldText("How figures are shown; both may be typed, with their unit"));
}

void profileField(const FieldContext& context, std::vector<Field>& out) {
  FieldMaker<Project> make(context.plan, projectPlace(), out);
  make.heading(fieldText("Code"));
  // Two words for no profile: the plan keeps its own.
  const bool word = make.value().profile == kGenericProfile;
  std::vector<std::string> keys = {word ? std::string(kGenericProfile) : std::string()};
  QStringList names = {fieldText("Generic figures")};
  for (const CodeProfile& profile : context.catalog.profiles) {
    keys.push_back(profile.key);
    names << coreText(profile.name);
  }
  const CodeProfile* chosen = context.catalog.profile(make.value().profile);
  make.choice<std::string>(
      fieldText("Code profile"), [](Project& p) -> std::string& { return p.profile; },
      std::move(keys), std::move(names),
      (chosen == nullptr ? fieldText("Whose limits the checks use.") : shown(chosen->about)) + " " +
          fieldText("The adopted local code and the authority having jurisdiction govern."));
}

/// A rectangle well round all that is drawn, or a usual lot where nothing is.
Ring usualBoundary(const Plan& plan) {
  constexpr double kMargin = 5; // metres
  const std::vector<Id> ids = allObjects(plan);
  const std::optional<Box> all = extentOf(plan, std::set<Id>(ids.begin(), ids.end()));
  const Box box = all ? grown(*all, kMargin) : Box{{0, 0}, {40, 25}};
  return {box.low, {box.high.x, box.low.y}, box.high, {box.low.x, box.high.y}};
}

void boundaryFields(const FieldContext& context, std::vector<Field>& out) {
  FieldMaker<Site> make(context.plan, sitePlace(), out);
  make.heading(fieldText("Property line"));
  if (make.value().boundary.empty()) {
    make.button(
        fieldText("Add a property line"),
        [](const Plan& plan, Site& s) { s.boundary = usualBoundary(plan); },
        fieldText("A rectangle round all that is drawn, to be dragged by its corners"));
    return;
  }
  cornerFieldsOf(make, &Site::boundary, context.units(), 3);
  make.button(fieldText("Remove the property line"),
              [](const Plan&, Site& s) { s.boundary.clear(); });
}

Place<std::vector<RevisionEntry>> revisionsPlace() {
  return {[](const Plan& plan) { return plan.revisions; },
          [](const Plan& plan, std::vector<RevisionEntry> value) {
            Plan next = plan;
            next.revisions = std::move(value);
            return next;
          }};
}

/// After the last one letter by letter, as drawings are usually revised: A, B, C ...
std::string nextIndex(const std::vector<RevisionEntry>& list) {
  if (list.empty()) return "A";
  const std::string& last = list.back().index;
  if (last.size() != 1 || last[0] < 'A' || last[0] >= 'Z') return "";
  return std::string(1, static_cast<char>(last[0] + 1));
}

void revisionFields(const FieldContext& context, std::vector<Field>& out) {
  using List = std::vector<RevisionEntry>;
  FieldMaker<List> make(context.plan, revisionsPlace(), out);
  const auto line = [&make](const char* label, std::string RevisionEntry::*member, std::size_t i,
                            const char* tip = "") {
    make.typed<std::string>(
        fieldText(label), [member, i](List& list) -> std::string& { return list[i].*member; },
        textWriting(), fieldText(tip));
  };
  for (std::size_t i = 0; i < make.value().size(); ++i) {
    make.heading(fieldText("Revision %1").arg(shown(make.value()[i].index)));
    line("Index", &RevisionEntry::index, i);
    line("Date", &RevisionEntry::date, i, "Year-month-day");
    line("What changed", &RevisionEntry::text, i);
    line("By", &RevisionEntry::by, i);
    make.button(fieldText("Remove this revision"), [i](const Plan&, List& list) {
      list.erase(list.begin() + static_cast<std::ptrdiff_t>(i));
    });
  }
  make.heading(fieldText("Revisions"));
  make.button(
      fieldText("Add a revision"),
      [](const Plan& plan, List& list) {
        list.push_back({nextIndex(list), plan.project.issueDate, {}, plan.project.createdBy});
      },
      fieldText("A line of the revision block on the sheets"));
}

void siteFields(const FieldContext& context, std::vector<Field>& out) {
  FieldMaker<Site> make(context.plan, sitePlace(), out);
  const UnitSystem units = context.units();
  make.heading(fieldText("Site"));
  make.typed<std::string>(
      fieldText("Datum"), [](Site& s) -> std::string& { return s.datum; }, textWriting(),
      fieldText("What elevations are measured from"));
  make.typed<Angle>(
      fieldText("True north"), [](Site& s) -> Angle& { return s.north; }, angleWriting(),
      fieldText("Counter-clockwise from straight up"));
  const auto level = [&make, units](const char* label, std::optional<Length> Site::*member,
                                    bool elevation, const char* tip) {
    make.typed<std::optional<Length>>(
        fieldText(label), [member](Site& s) -> std::optional<Length>& { return s.*member; },
        optionalWriting(elevation ? elevationWriting(units) : lengthWriting(units)),
        fieldText(tip));
  };
  level("Groundwater", &Site::groundwater, true, "Highest expected elevation; may be left empty");
  level("Frost depth", &Site::frostDepth, false, "Below grade; may be left empty");
  level("Usual grade", &Site::groundDefault, true,
        "Ground elevation where no spot elevation was shot");
}

QString printLimit(const Limit& limit, double value, UnitSystem units) {
  switch (limit.kind) {
  case LimitKind::Length:
    return shown(printShort(metres(value), units));
  case LimitKind::Volume:
    return shown(printVolume(cubicMetres(value), units));
  case LimitKind::Slope:
    return shown(printSlope(value, units));
  case LimitKind::Angle:
    return shown(printAngle(radians(value)));
  case LimitKind::Number:
  case LimitKind::Count:
    break;
  }
  return QString::number(value, 'g', 6);
}

template <class Q> Parsed<double> bare(const Parsed<Q>& parsed) {
  if (!parsed) return {std::nullopt, parsed.error};
  return {parsed.value->value(), {}};
}

Parsed<double> parseLimit(const Limit& limit, const QString& typed, UnitSystem units) {
  const std::string text = typed.trimmed().toStdString();
  switch (limit.kind) {
  case LimitKind::Length:
    return bare(evaluateLength(text, units));
  case LimitKind::Volume:
    return bare(evaluateVolume(text, units));
  case LimitKind::Slope:
    return evaluateSlope(text, units);
  case LimitKind::Angle:
    return bare(evaluateAngle(text));
  case LimitKind::Number:
  case LimitKind::Count:
    break;
  }
  return evaluateNumber(text);
}

/// Text for the usual figure is not kept in the plan, so that a later table reaches it.
FieldResult writeLimit(const Limit& limit, UnitSystem units, const Plan& plan,
                       const QString& text) {
  Plan next = plan;
  if (text.trimmed().isEmpty()) {
    next.limits.erase(limit.id);
    return {std::move(next), {}};
  }
  const Parsed<double> parsed = parseLimit(limit, text, units);
  if (!parsed) return {std::nullopt, typedProblem(parsed.error, text)};
  next.limits[limit.id] = *parsed.value;
  return {std::move(next), {}};
}

void limitFields(const FieldContext& context, std::vector<Field>& out) {
  Field heading;
  heading.kind = FieldKind::Heading;
  heading.label = fieldText("Limits that the checks use");
  out.push_back(heading);
  const UnitSystem units = context.units();
  const Limits limits = context.catalog.limitsOf(context.plan.project.profile);
  for (const Limit& limit : limits.table()) {
    const auto own = context.plan.limits.find(limit.id);
    const double value = own == context.plan.limits.end() ? limit.value : own->second;
    Field field;
    field.label = coreText(limit.title);
    field.text = printLimit(limit, value, units);
    field.tip =
        fieldText("Usual: %1 (%2). Empty the field to go back to it. The adopted local code "
                  "governs.")
            .arg(printLimit(limit, limit.value, units), shown(limit.source()));
    field.write = [limit, units](const Plan& plan, const QString& text) {
      return writeLimit(limit, units, plan, text);
    };
    out.push_back(std::move(field));
  }
}

} // namespace

std::vector<Field> projectFields(const FieldContext& context) {
  std::vector<Field> fields;
  titleFields(context, fields);
  profileField(context, fields);
  revisionFields(context, fields);
  siteFields(context, fields);
  boundaryFields(context, fields);
  limitFields(context, fields);
  return fields;
}

} // namespace sump
