package org.axlecause.pages;

import jakarta.enterprise.context.ApplicationScoped;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.axlecause.access.Actor;
import org.axlecause.access.ReadSites;
import org.axlecause.access.Site;
import org.axlecause.policy.ClauseWanted;
import org.axlecause.policy.EditPolicies;
import org.axlecause.policy.Layer;
import org.axlecause.policy.LayerName;
import org.axlecause.policy.PolicyDocument;
import org.axlecause.policy.PolicyDraft;
import org.axlecause.policy.ReadLayers;
import org.axlecause.shared.Problem;
import org.axlecause.shared.RefusedException;
import org.axlecause.shared.RefusedException.Reason;
import org.jspecify.annotations.Nullable;

/** Shows a layer of a policy as a form, and writes the draft that a form says. */
@ApplicationScoped
class EditLayer {

    private static final LayerName CHAIN = new LayerName(Layer.CHAIN, "");
    private static final List<String> MEMBERS = List.of(
            "figure",
            "brake",
            "axle",
            "build",
            "action",
            "item",
            "quantity",
            "value",
            "unit",
            "necessity",
            "extent",
            "by");
    private static final Map<String, String> LABELS = Map.of(
            "axle", "Number of the axle, left empty for all",
            "by", "Who must agree",
            "build", "Kind of brake",
            "extent", "How far the work goes",
            "item", "Part",
            "quantity", "What is measured");
    private static final Pattern CLAUSE_AT = Pattern.compile("(/chain|/regions/[^/]*|/sites/[^/]*)/(\\d+)(/.*)?");

    private final ReadLayers readLayers;
    private final EditPolicies editPolicies;
    private final ReadSites readSites;
    private final PlainWords plainWords;

    EditLayer(ReadLayers readLayers, EditPolicies editPolicies, ReadSites readSites, PlainWords plainWords) {
        this.readLayers = readLayers;
        this.editPolicies = editPolicies;
        this.readSites = readSites;
        this.plainWords = plainWords;
    }

    /** The form of a layer as the draft has it. */
    LayerForm show(String name, @Nullable String wanted, Actor actor) {
        LayerName layer = layer(wanted, actor);
        ReadLayers.Beginning beginning = readLayers.beginning(name, actor);
        return new Shown(name, layer, beginning, actor).form(null, List.of());
    }

    /** Writes the draft; null where that is done, else the form as it was typed, with what keeps it from being written. */
    @Nullable
    LayerForm save(String name, Form form, Actor actor) {
        LayerName layer = layer(form.text("layer"), actor);
        ReadLayers.Beginning beginning = readLayers.beginning(name, actor);
        Shown shown = new Shown(name, layer, beginning, actor);
        Typed typed = new Typed(form, layer);
        List<Problem.Cause> wrong = new ArrayList<>(typed.wrong);
        if (wrong.isEmpty()) {
            String tag = form.text("tag");
            try {
                editPolicies.write(
                        name, tag.isEmpty() ? null : '"' + tag + '"', typed.over(beginning.document()), actor);
                return null;
            } catch (RefusedException refused) {
                Problem problem = refused.problem();
                if (problem.status() == Reason.PRECONDITION_FAILED.status()
                        || problem.status() == Reason.PRECONDITION_REQUIRED.status()) {
                    return shown.overtaken(typed, base(form));
                }
                if (problem.causes().isEmpty()) {
                    throw refused;
                }
                wrong.addAll(problem.causes());
            }
        }
        return shown.form(typed, wrong);
    }

    private static PolicyDocument base(Form form) {
        try {
            return PolicyDocument.of(form.text("base")).known();
        } catch (IllegalStateException broken) {
            throw RefusedException.because(
                    Reason.MALFORMED, "The form is damaged. Open the page again and send it from there.");
        }
    }

    /** The layer that was asked for, else the first that the actor may edit. */
    private LayerName layer(@Nullable String wanted, Actor actor) {
        if (wanted == null || wanted.isEmpty()) {
            return actor.sites() == null
                    ? CHAIN
                    : new LayerName(
                            Layer.SITE,
                            actor.sites().stream().sorted().findFirst().orElse(""));
        }
        return LayerName.of(wanted)
                .orElseThrow(() -> RefusedException.notFound(
                        "There is no layer '" + wanted + "'. Expected is chain, or region or site with its code."));
    }

    static String plain(String code) {
        return code.replace('-', ' ');
    }

    /** What is set, and for what where a clause may be set more than once. */
    static String says(ClauseWanted set) {
        String about = set.about();
        return PlainWords.unparted(about.isEmpty() ? set.says() : about + ": " + set.says());
    }

    /** What a form says. */
    private static final class Typed {

        private final Form form;
        private final LayerName layer;
        private final List<Problem.Cause> wrong = new ArrayList<>();
        private final Map<Integer, Map<String, String>> rows = new TreeMap<>();
        private final List<Integer> numbers = new ArrayList<>();
        private final List<ClauseWanted> clauses = new ArrayList<>();

        Typed(Form form, LayerName layer) {
            this.form = form;
            this.layer = layer;
            for (String field : form.namesAfter("row.")) {
                String[] words = field.split("\\.", 2);
                if (words.length == 2 && words[0].matches("[0-9]{1,4}")) {
                    rows.computeIfAbsent(Integer.valueOf(words[0]), number -> new LinkedHashMap<>())
                            .put(words[1], form.text("row." + field));
                }
            }
            rows.forEach(this::read);
        }

        private void read(int number, Map<String, String> row) {
            boolean says = says(row);
            if (!says && row.containsKey("locked")) {
                wrong.add(new Problem.Cause(
                        layer.pointer() + "/" + numbers.size(), "Say what is locked: fill in what the clause sets."));
            }
            if (says || row.containsKey("locked")) {
                numbers.add(number);
                clauses.add(clause(row));
            }
        }

        /** Whether a row sets anything. */
        static boolean says(Map<String, String> row) {
            return MEMBERS.stream()
                    .filter(member -> !member.equals("unit"))
                    .anyMatch(member -> !row.getOrDefault(member, "").isEmpty());
        }

        /** The rows that say otherwise than the layer did when the edit began. */
        List<Map<String, String>> changedSince(Map<String, ClauseWanted> before) {
            return rows.entrySet().stream()
                    .filter(row -> {
                        int index = numbers.indexOf(row.getKey());
                        ClauseWanted now = index < 0 ? null : clauses.get(index);
                        ClauseWanted was = before.get(row.getValue().getOrDefault("key", ""));
                        return now == null ? was != null : was == null || !isAlike(now, was);
                    })
                    .map(Map.Entry::getValue)
                    .toList();
        }

        private static boolean isAlike(ClauseWanted one, ClauseWanted other) {
            return one.key().equals(other.key())
                    && one.says().equals(other.says())
                    && Boolean.TRUE.equals(one.locked()) == Boolean.TRUE.equals(other.locked());
        }

        private ClauseWanted clause(Map<String, String> row) {
            BigDecimal value = number(row.get("value"), "The value");
            BigDecimal axle = number(row.get("axle"), "The axle");
            return new ClauseWanted(
                    row.get("clause"),
                    value,
                    value == null ? null : text(row, "unit"),
                    text(row, "necessity"),
                    text(row, "extent"),
                    text(row, "figure"),
                    text(row, "brake"),
                    axle == null ? null : axle.intValue(),
                    text(row, "build"),
                    text(row, "action"),
                    text(row, "item"),
                    text(row, "quantity"),
                    text(row, "by"),
                    row.containsKey("locked") ? Boolean.TRUE : null);
        }

        private static @Nullable String text(Map<String, String> row, String member) {
            String text = row.getOrDefault(member, "");
            return text.isEmpty() ? null : text;
        }

        private @Nullable BigDecimal number(@Nullable String text, String words) {
            if (text == null || text.isEmpty()) {
                return null;
            }
            String number = text.replace(',', '.');
            if (number.matches("[0-9]{1,9}([.][0-9]{1,6})?")) {
                return new BigDecimal(number);
            }
            wrong.add(new Problem.Cause(
                    layer.pointer() + "/" + (numbers.size() - 1),
                    words + " is \"" + text + "\"; expected is a number such as 20 or 1.6."));
            return null;
        }

        /** The document with what was typed in place of what this form shows of it. */
        PolicyDocument over(PolicyDocument document) {
            PolicyDocument written = layer.layer() == Layer.CHAIN
                    ? new PolicyDocument(
                            form.text("means"),
                            form.all("covers").isEmpty() ? null : List.copyOf(form.all("covers")),
                            form.text("twoPersons").isEmpty() ? null : Boolean.TRUE,
                            document.chain(),
                            document.regions(),
                            document.sites())
                    : document;
            return written.with(layer, clauses);
        }
    }

    /** A layer on its way to a form. */
    private final class Shown {

        private final String name;
        private final LayerName layer;
        private final ReadLayers.Beginning beginning;
        private final Actor actor;
        private final List<Site> sites;

        Shown(String name, LayerName layer, ReadLayers.Beginning beginning, Actor actor) {
            this.name = name;
            this.layer = layer;
            this.beginning = beginning;
            this.actor = actor;
            this.sites = readSites.visible(actor);
        }

        LayerForm form(@Nullable Typed typed, List<Problem.Cause> wrong) {
            List<ReadLayers.Line> lines = readLayers.lines(beginning.document(), layer, actor);
            Map<Integer, String> wrongAt = new TreeMap<>();
            List<String> elsewhere = new ArrayList<>();
            sort(typed, wrong, wrongAt, elsewhere);
            List<LayerForm.Row> set = new ArrayList<>();
            List<LayerForm.Row> left = new ArrayList<>();
            int number = 0;
            for (ReadLayers.Line line : typed == null ? lines : List.<ReadLayers.Line>of()) {
                (line.set() == null ? left : set).add(row(number, line, members(line), null));
                number++;
            }
            if (typed != null) {
                for (Map.Entry<Integer, Map<String, String>> each : typed.rows.entrySet()) {
                    ReadLayers.Line line = lineOf(lines, each.getValue());
                    if (line != null) {
                        (typed.numbers.contains(each.getKey()) ? set : left)
                                .add(row(each.getKey(), line, each.getValue(), wrongAt.get(each.getKey())));
                    }
                }
            }
            return form(typed == null ? null : typed.over(beginning.document()), set, left, elsewhere, List.of());
        }

        /** The form with what somebody else has written since, and over it what was typed here. */
        LayerForm overtaken(Typed typed, PolicyDocument base) {
            Map<String, ClauseWanted> before = byKey(base.of(layer));
            List<LayerForm.Row> set = new ArrayList<>();
            List<LayerForm.Row> left = new ArrayList<>();
            List<Map<String, String>> changed = typed.changedSince(before);
            int number = 0;
            for (ReadLayers.Line line : readLayers.lines(beginning.document(), layer, actor)) {
                Map<String, String> own = changed.stream()
                        .filter(row -> row.getOrDefault("clause", "").equals(line.code()))
                        .filter(row -> row.getOrDefault("key", "").equals(keyOf(line)))
                        .findFirst()
                        .orElse(null);
                boolean says = own == null ? line.set() != null : Typed.says(own);
                (says ? set : left).add(row(number, line, own == null ? members(line) : own, null));
                number++;
            }
            PolicyDocument mine = typed.over(beginning.document());
            PolicyDocument now = beginning.document();
            return form(
                    layer.layer() == Layer.CHAIN
                            ? new PolicyDocument(
                                    Objects.equals(mine.means(), base.means()) ? now.means() : mine.means(),
                                    Objects.equals(mine.covers(), base.covers()) ? now.covers() : mine.covers(),
                                    Objects.equals(mine.twoPersons(), base.twoPersons())
                                            ? now.twoPersons()
                                            : mine.twoPersons(),
                                    now.chain(),
                                    now.regions(),
                                    now.sites())
                            : null,
                    set,
                    left,
                    List.of(),
                    readLayers.changes(base, now));
        }

        private LayerForm form(
                @Nullable PolicyDocument head,
                List<LayerForm.Row> set,
                List<LayerForm.Row> left,
                List<String> wrong,
                List<String> changes) {
            PolicyDraft draft = beginning.draft();
            return new LayerForm(
                    name,
                    layer.toString(),
                    title(layer),
                    layers(),
                    draft == null ? "" : draft.tag().toString(),
                    beginning.document().toJson(),
                    layer.layer() == Layer.CHAIN ? head(head == null ? beginning.document() : head) : null,
                    set,
                    groups(left),
                    Stream.concat(set.stream(), left.stream())
                            .filter(row -> row.wrong() != null)
                            .toList(),
                    wrong,
                    changes);
        }

        /** The clauses by what they are about, as the words of the sheets group them. */
        private List<LayerForm.Group> groups(List<LayerForm.Row> rows) {
            Map<String, List<LayerForm.Row>> groups = new LinkedHashMap<>();
            plainWords.clauseGroups().forEach(group -> groups.put(group, new ArrayList<>()));
            rows.forEach(row -> groups.computeIfAbsent(plainWords.clauseGroup(row.code()), each -> new ArrayList<>())
                    .add(row));
            return groups.entrySet().stream()
                    .filter(group -> !group.getValue().isEmpty())
                    .map(group -> new LayerForm.Group(group.getKey(), group.getValue()))
                    .toList();
        }

        private static Map<String, ClauseWanted> byKey(List<ClauseWanted> clauses) {
            Map<String, ClauseWanted> byKey = new TreeMap<>();
            clauses.forEach(clause -> byKey.put(clause.key(), clause));
            return byKey;
        }

        /** Tells which row each cause is about, if it is about one. */
        private void sort(
                @Nullable Typed typed,
                List<Problem.Cause> wrong,
                Map<Integer, String> wrongAt,
                List<String> elsewhere) {
            for (Problem.Cause cause : wrong) {
                Matcher at = CLAUSE_AT.matcher(cause.pointer());
                int index = at.matches() && at.group(1).equals(layer.pointer()) ? Integer.parseInt(at.group(2)) : -1;
                if (typed != null && index >= 0 && index < typed.numbers.size()) {
                    wrongAt.merge(typed.numbers.get(index), cause.text(), (one, other) -> one + " " + other);
                } else {
                    elsewhere.add(cause.text());
                }
            }
        }

        private static ReadLayers.@Nullable Line lineOf(List<ReadLayers.Line> lines, Map<String, String> typed) {
            String code = typed.getOrDefault("clause", "");
            String key = typed.getOrDefault("key", "");
            return lines.stream()
                    .filter(line -> line.code().equals(code))
                    .filter(line -> !line.repeated() || keyOf(line).equals(key))
                    .findFirst()
                    .or(() -> lines.stream()
                            .filter(line -> line.code().equals(code))
                            .reduce((one, last) -> last))
                    .orElse(null);
        }

        private LayerForm.Row row(
                int number, ReadLayers.Line line, Map<String, String> members, @Nullable String wrong) {
            String prefix = "row." + number + ".";
            String unit = line.unit() == null ? null : members.getOrDefault("unit", line.unit());
            List<LayerForm.Field> fields = MEMBERS.stream()
                    .filter(line.takes()::contains)
                    .filter(member -> unit == null || !member.equals("unit"))
                    .map(member -> field(
                            prefix + member,
                            member,
                            member.equals("value") && unit != null && !unit.equals("1")
                                    ? "Value in " + PlainWords.unit(unit)
                                    : LABELS.getOrDefault(member, PlainWords.sentence(member)),
                            members.getOrDefault(member, "")))
                    .toList();
            return new LayerForm.Row(
                    String.valueOf(number),
                    line.code(),
                    keyOf(line),
                    PlainWords.sentence(line.means()),
                    line.repeated() ? "" : line.source(),
                    line.above() == null
                            ? ""
                            : says(line.above())
                                    + (line.from().equals("baseline") ? "" : ", set by the " + line.from()),
                    line.set() == null ? "" : says(line.set()),
                    line.lockedBy(),
                    unit,
                    fields,
                    members.containsKey("locked"),
                    !isAlike(members, members(line)),
                    line.repeated() && line.set() == null && setsAnother(line.code()),
                    wrong);
        }

        /** Whether the layer sets the clause already, for something else. */
        private boolean setsAnother(String clause) {
            return beginning.document().of(layer).stream().anyMatch(wanted -> clause.equals(wanted.clause()));
        }

        private static boolean isAlike(Map<String, String> one, Map<String, String> other) {
            return one.containsKey("locked") == other.containsKey("locked")
                    && MEMBERS.stream()
                            .allMatch(member -> one.getOrDefault(member, "").equals(other.getOrDefault(member, "")));
        }

        private static LayerForm.Field field(String name, String member, String label, String value) {
            List<LayerForm.Choice> choices = ReadLayers.choices(member).stream()
                    .map(code -> new LayerForm.Choice(
                            code,
                            PlainWords.sentence(
                                    code.equals("none")
                                            ? "not called for"
                                            : member.equals("extent") ? PlainWords.extent(code) : plain(code)),
                            code.equals(value)))
                    .toList();
            return new LayerForm.Field(name, label, value, choices);
        }

        /** What a clause says as its form would send it. */
        private static Map<String, String> members(ReadLayers.Line line) {
            Map<String, String> members = new LinkedHashMap<>();
            ClauseWanted set = line.set();
            if (line.unit() != null) {
                members.put("unit", line.unit());
            }
            if (set != null) {
                put(
                        members,
                        "value",
                        set.value() == null
                                ? null
                                : set.value().stripTrailingZeros().toPlainString());
                put(members, "unit", set.unit());
                put(members, "necessity", set.necessity());
                put(members, "extent", set.extent());
                put(members, "figure", set.figure());
                put(members, "brake", set.brake());
                put(members, "axle", set.axle() == null ? null : set.axle().toString());
                put(members, "build", set.build());
                put(members, "action", set.action());
                put(members, "item", set.item());
                put(members, "quantity", set.quantity());
                put(members, "by", set.by());
                put(members, "locked", Boolean.TRUE.equals(set.locked()) ? "yes" : null);
            }
            return members;
        }

        private static void put(Map<String, String> members, String name, @Nullable String value) {
            if (value != null) {
                members.put(name, value);
            }
        }

        private static String keyOf(ReadLayers.Line line) {
            ClauseWanted any = line.set() == null ? line.above() : line.set();
            return any == null ? "" : any.key();
        }

        private LayerForm.Head head(PolicyDocument document) {
            List<String> covers = Objects.requireNonNullElse(document.covers(), List.of());
            return new LayerForm.Head(
                    Objects.requireNonNullElse(document.means(), ""),
                    sites.stream()
                            .map(site -> new LayerForm.Choice(site.site(), site.name(), covers.contains(site.site())))
                            .toList(),
                    Boolean.TRUE.equals(document.twoPersons()));
        }

        private List<LayerForm.Choice> layers() {
            List<LayerName> names = new ArrayList<>();
            if (actor.sites() == null) {
                names.add(CHAIN);
                sites.stream()
                        .map(Site::region)
                        .filter(Objects::nonNull)
                        .distinct()
                        .sorted()
                        .forEach(region -> names.add(new LayerName(Layer.REGION, region)));
            }
            sites.forEach(site -> names.add(new LayerName(Layer.SITE, site.site())));
            Set<LayerName> known = Set.copyOf(names);
            if (!known.contains(layer)) {
                throw RefusedException.notFound("There is no layer '" + layer + "' that this key may edit.");
            }
            return names.stream()
                    .map(each -> new LayerForm.Choice(each.toString(), title(each), each.equals(layer)))
                    .toList();
        }

        private String title(LayerName of) {
            return switch (of.layer()) {
                case REGION -> "Region " + of.code();
                case SITE ->
                    sites.stream()
                            .filter(site -> site.site().equals(of.code()))
                            .map(site -> "Site " + site.name())
                            .findFirst()
                            .orElse("Site " + of.code());
                default -> "Whole chain";
            };
        }
    }
}
