package org.axlecause.pages;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import jakarta.enterprise.context.ApplicationScoped;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.axlecause.catalogue.Catalogue;
import org.axlecause.catalogue.CatalogueKind;
import org.axlecause.shared.RefusedException;
import org.jspecify.annotations.Nullable;

/** Puts the entries of the catalogue into words and links them with each other. */
@ApplicationScoped
class ReadRulebook {

    private static final int MOST_FOUND = 20;
    private static final int LONGEST_SEARCH = 100;
    private static final int IN_A_HUNDRED = 100;
    private static final int LETTERS_OF_A_KIND = 3;

    /** What each list holds. */
    private static final Map<CatalogueKind, String> ABOUT = Map.of(
            CatalogueKind.CAUSES, "Why a brake fails, what shows it, what proves it, and what work follows.",
            CatalogueKind.CHECKS, "Looks and measurements, how long they take, and what can come out of them.",
            CatalogueKind.SYMPTOMS, "What figures and complaints show; not yet a reason.",
            CatalogueKind.RULES, "The rules that draw conclusions, each with its reason and source.",
            CatalogueKind.REGIMES, "Inspections with their limits, formulas and dates.",
            CatalogueKind.CAUTIONS, "What can hurt people, and before which steps it must be read.",
            CatalogueKind.STEPS, "Work in the bay, what must hold after it, and tools.",
            CatalogueKind.COMPONENTS, "Parts that are looked at.",
            CatalogueKind.CONDITIONS, "States in which parts are found.",
            CatalogueKind.SETTINGS, "Values that belong to no single entry.");

    private static final List<CatalogueKind> ORDER = List.of(
            CatalogueKind.CAUSES,
            CatalogueKind.CHECKS,
            CatalogueKind.SYMPTOMS,
            CatalogueKind.RULES,
            CatalogueKind.REGIMES,
            CatalogueKind.CAUTIONS,
            CatalogueKind.STEPS,
            CatalogueKind.COMPONENTS,
            CatalogueKind.CONDITIONS,
            CatalogueKind.SETTINGS);

    /** Beginnings of the ids of rules, in the order in which what they conclude leads to the next. */
    private static final List<String> TURNS = List.of("SYM", "DEF", "CAU", "SCO", "WRK", "OUT");

    /** What rules conclude, by the beginning of their id. */
    private static final Map<String, String> KINDS_OF_RULES = Map.of(
            "SYM", "What the figures and complaints show",
            "DEF", "What is beyond the limits",
            "CAU", "What speaks for and against causes",
            "SCO", "Which work is called for",
            "WRK", "How the work is done",
            "OUT", "Fitness for the road and proof of the repair");

    /** What settings are about, by the file that they stand in. */
    private static final Map<String, String> FILES_OF_SETTINGS = Map.of(
            "policies/baseline.yaml", "Policy of the release",
            "cause-model/inference.yaml", "How causes are weighed",
            "measurement/trade-values.yaml", "How a roller test is read",
            "statistics/learning.yaml", "How weights of causes are learned");

    private static final String MEMBERS_OF_SETTINGS = "setting-members";
    private static final String WHEEL = "wheel";

    /** Members of an entry that name entries of a list. */
    private static final Map<String, CatalogueKind> LEADS_TO = Map.ofEntries(
            Map.entry("checks", CatalogueKind.CHECKS),
            Map.entry("causes", CatalogueKind.CAUSES),
            Map.entry("excludes", CatalogueKind.CAUSES),
            Map.entry("leadsTo", CatalogueKind.CAUSES),
            Map.entry("cautions", CatalogueKind.CAUTIONS),
            Map.entry("precedes", CatalogueKind.STEPS),
            Map.entry("needs", CatalogueKind.STEPS),
            Map.entry("keepsPattern", CatalogueKind.STEPS),
            Map.entry("backTo", CatalogueKind.STEPS),
            Map.entry("needsSymptom", CatalogueKind.SYMPTOMS),
            Map.entry("eachWheel", CatalogueKind.SYMPTOMS),
            Map.entry("evidence", CatalogueKind.SYMPTOMS));

    /** Members of a few words. */
    private static final Set<String> BRIEF =
            Set.of("reason", "layer", "at", "minutes", "access", "risk", "says", "file", "since", "until", "version");

    /** Lists that stand in no order of their own. */
    private static final Set<CatalogueKind> SORTED = EnumSet.of(
            CatalogueKind.CAUSES,
            CatalogueKind.CHECKS,
            CatalogueKind.SYMPTOMS,
            CatalogueKind.COMPONENTS,
            CatalogueKind.CONDITIONS,
            CatalogueKind.STEPS);

    /** Members of an entry with their titles, in reading order. */
    private static final Map<String, String> TITLES = titles();

    private final Catalogue catalogue;
    private final PlainWords words;

    ReadRulebook(Catalogue catalogue, PlainWords words) {
        this.catalogue = catalogue;
        this.words = words;
    }

    private static Map<String, String> titles() {
        Map<String, String> titles = new LinkedHashMap<>();
        titles.put("reason", "Because");
        titles.put("layer", "What it draws");
        titles.put("at", "Where");
        titles.put("provedBy", "Proved by any of");
        titles.put("refutedBy", "Ruled out by any of");
        titles.put("evidence", "What it shows or leaves");
        titles.put("leadsTo", "Leads to");
        titles.put("makesScope", "Work that follows");
        titles.put("excludes", "Can't be at the same place as");
        titles.put("causes", "Causes that show it");
        titles.put("checks", "Checks that look at it");
        titles.put("findings", "Findings that tell something");
        titles.put("answers", "What can come out");
        titles.put("cautions", "Cautions");
        titles.put("minutes", "Minutes on the spot");
        titles.put("access", "How far the vehicle is taken apart");
        titles.put("risk", "Harm that it can do to parts");
        titles.put("needsSymptom", "Only with the symptom");
        titles.put("eachWheel", "Sums up the symptom of single wheels");
        titles.put("precedes", "To be read before");
        titles.put("does", "Work that is done with it");
        titles.put("needs", "Steps that come first");
        titles.put("keepsPattern", "On the other side first");
        titles.put("verify", "What must hold before the next step");
        titles.put("stop", "When to stop");
        titles.put("backTo", "A failure leads back to");
        titles.put("tools", "Tools, by common practice");
        titles.put("likelierAfter", "Likelier after work on");
        titles.put("weights", "How often it is behind a complaint, against the other causes");
        titles.put("bothSides", "On both wheels of the axle");
        titles.put("withoutCause", "Shows without any cause");
        titles.put("values", "What it asks");
        titles.put("says", "Value");
        titles.put("file", "File of the rules folder");
        titles.put("since", "Holds from");
        titles.put("until", "Holds until");
        titles.put("version", "Fingerprint of the file");
        return titles;
    }

    /** One list, or all of them with what the search finds in them. */
    RulebookLists lists(@Nullable String kind, @Nullable String asked) {
        String search = searchable(asked == null ? "" : asked.strip());
        if (search.length() > LONGEST_SEARCH) {
            search = search.substring(0, LONGEST_SEARCH);
        }
        List<CatalogueKind> shown = kind == null ? ORDER : List.of(known(kind));
        List<RulebookLists.Listed> lists = new ArrayList<>();
        for (CatalogueKind list : shown) {
            List<RulebookLists.Line> found = kind == null && search.isEmpty() ? List.of() : found(list, search);
            if (!found.isEmpty() || search.isEmpty()) {
                int most = kind != null ? found.size() : Math.min(MOST_FOUND, found.size());
                lists.add(new RulebookLists.Listed(
                        kind(list),
                        ABOUT.getOrDefault(list, ""),
                        found.subList(0, most),
                        search.isEmpty() ? groups(list, found) : List.of(),
                        found.size() - most));
            }
        }
        return new RulebookLists(
                ORDER.stream().map(ReadRulebook::kind).toList(),
                kind == null ? null : known(kind).toString(),
                asked == null ? "" : asked.strip(),
                lists);
    }

    private List<RulebookLists.Line> found(CatalogueKind list, String search) {
        return catalogue.written(list).stream()
                .filter(entry -> search.isEmpty() || speaksOf(list, entry, search))
                .map(entry -> line(list, entry))
                .sorted(Comparator.comparing(line -> SORTED.contains(list) ? line.name() : ""))
                .toList();
    }

    /** Whether what is searched for stands in the name of an entry or in anything that it says. */
    private boolean speaksOf(CatalogueKind list, JsonNode entry, String search) {
        RulebookLists.Line line = line(list, entry);
        return Stream.concat(Stream.of(line.name(), line.text()), said(entry))
                .anyMatch(text -> searchable(text).contains(search));
    }

    private static Stream<String> said(JsonNode value) {
        return value.isContainerNode()
                ? ComposeSheet.stream(value).flatMap(ReadRulebook::said)
                : Stream.of(value.asText());
    }

    private String searchable(String text) {
        return plain(words.named(text.toLowerCase(Locale.ROOT)));
    }

    private List<RulebookLists.Group> groups(CatalogueKind list, List<RulebookLists.Line> lines) {
        if (list != CatalogueKind.RULES && list != CatalogueKind.SETTINGS) {
            return List.of();
        }
        boolean rules = list == CatalogueKind.RULES;
        return lines.stream()
                .sorted(Comparator.comparingInt(line -> rules ? turnOfRule(line.code()) : 0))
                .map(line -> rules ? line.saying(line.code()) : line)
                .collect(Collectors.groupingBy(
                        line -> rules ? kindOfRule(line.code()) : aboutOfSetting(line.code()),
                        LinkedHashMap::new,
                        Collectors.toList()))
                .entrySet()
                .stream()
                .map(group -> new RulebookLists.Group(group.getKey(), group.getValue()))
                .toList();
    }

    /** What a rule concludes, in words. */
    static String kindOfRule(String rule) {
        return KINDS_OF_RULES.getOrDefault(lettersOfKind(rule), "Other rules");
    }

    /** Where a rule stands among those that lead to one another. */
    static int turnOfRule(String rule) {
        int turn = TURNS.indexOf(lettersOfKind(rule));
        return turn < 0 ? TURNS.size() : turn;
    }

    private static String lettersOfKind(String rule) {
        return rule.substring(0, Math.min(LETTERS_OF_A_KIND, rule.length()));
    }

    /** What a setting is about: clauses of the policy by their groups, all others by their file. */
    private String aboutOfSetting(String code) {
        return words.clauseGroups().contains(words.clauseGroup(code))
                ? "Policy: " + words.clauseGroup(code)
                : catalogue
                        .written(CatalogueKind.SETTINGS, code)
                        .map(setting -> FILES_OF_SETTINGS.getOrDefault(
                                setting.path("file").asText(), "Other settings"))
                        .orElse("Other settings");
    }

    /** One entry; refuses where there is none. */
    RulebookEntry entry(String kind, String code) {
        CatalogueKind list = known(kind);
        JsonNode entry = catalogue
                .written(list, code)
                .orElseThrow(() -> RefusedException.notFound(
                        "There is no '" + code + "' among the " + list + " of the rulebook. Look for it in the list."));
        List<RulebookEntry.Part> parts = new ArrayList<>();
        RulebookEntry.Item own = known("", entry);
        TITLES.forEach((member, title) -> {
            List<RulebookEntry.Item> items = items(code, member, entry.path(member)).stream()
                    .map(item -> item.withoutKnown(own.known()))
                    .toList();
            if (!items.isEmpty()) {
                parts.add(part(title, BRIEF.contains(member), items));
            }
        });
        if (list == CatalogueKind.CAUTIONS) {
            List<RulebookEntry.Item> checks = items(code, "checks", checksWith(code));
            if (!checks.isEmpty()) {
                parts.add(part("Checks that it is told with", false, checks));
            }
        }
        RulebookLists.Line line = line(list, entry);
        return new RulebookEntry(
                kind(list),
                line.name(),
                line.code(),
                list == CatalogueKind.SETTINGS ? "" : line.text(),
                entry.has("standing")
                        ? PlainWords.sentence(plain(entry.path("standing").asText()))
                        : null,
                entry.has("source")
                        ? PlainWords.sentence(
                                PlainWords.unparted(entry.path("source").asText()))
                        : null,
                parts);
    }

    /** Codes of the checks that a caution is told with. */
    private ArrayNode checksWith(String caution) {
        ArrayNode codes = JsonNodeFactory.instance.arrayNode();
        catalogue.written(CatalogueKind.CHECKS).stream()
                .filter(check -> ComposeSheet.stream(check.path("cautions"))
                        .anyMatch(named -> named.asText().equals(caution)))
                .forEach(check -> codes.add(check.path("code").asText()));
        return codes;
    }

    /** A part that says once what most of its items would say of where they come from. */
    private static RulebookEntry.Part part(String title, boolean brief, List<RulebookEntry.Item> items) {
        Map<String, Long> known = items.stream()
                .map(RulebookEntry.Item::known)
                .filter(Objects::nonNull)
                .collect(Collectors.groupingBy(each -> each, LinkedHashMap::new, Collectors.counting()));
        String most = known.entrySet().stream()
                .filter(each -> each.getValue() > 1)
                .max(Map.Entry.comparingByValue())
                .map(Map.Entry::getKey)
                .orElse(null);
        return new RulebookEntry.Part(
                title,
                brief && items.size() == 1 && items.get(0).address() == null,
                most,
                items.stream().map(item -> item.withoutKnown(most)).toList());
    }

    private static CatalogueKind known(String kind) {
        return CatalogueKind.of(kind)
                .orElseThrow(() -> RefusedException.notFound("The rulebook has no list '" + kind + "'."));
    }

    private static RulebookLists.Kind kind(CatalogueKind list) {
        return new RulebookLists.Kind(list.toString(), PlainWords.sentence(list.toString()));
    }

    private RulebookLists.Line line(CatalogueKind list, JsonNode entry) {
        String code = entry.path(list == CatalogueKind.RULES ? "id" : "code").asText();
        String name =
                switch (list) {
                    case RULES -> PlainWords.sentence(entry.path("text").asText());
                    case SETTINGS ->
                        PlainWords.sentence(entry.at("/says/means").asText(words.word("settings", code, "text")));
                    case REGIMES -> PlainWords.sentence(entry.path("text").asText());
                    default -> PlainWords.sentence(words.named(code));
                };
        return new RulebookLists.Line(
                code,
                name,
                switch (list) {
                    case REGIMES -> "";
                    case RULES -> code + ", " + kindOfRule(code).toLowerCase(Locale.ROOT);
                    case SETTINGS -> String.join(", ", setting(code, entry.path("says")));
                    default -> PlainWords.sentence(entry.path("text").asText());
                },
                address(list, code));
    }

    /** The value of a setting with its unit; of one that has several, each with its name. */
    private List<String> setting(String code, JsonNode says) {
        String necessity = says.path("necessity").asText();
        if (necessity.equals("none")) {
            return List.of("not called for");
        }
        List<String> clause = new ArrayList<>();
        if (says.has("value")) {
            clause.add(amount(
                    "settings", code, says.path("value"), says.path("unit").asText("")));
        }
        if (says.has("extent")) {
            clause.add(PlainWords.extent(says.path("extent").asText()));
        }
        if (!necessity.isEmpty()) {
            clause.add(plain(necessity));
        }
        if (!clause.isEmpty()) {
            return List.of(String.join(", ", clause));
        }
        if (says.has("means")) {
            return List.of("not set");
        }
        return says.properties().stream()
                .map(member -> words.optional(MEMBERS_OF_SETTINGS, member.getKey(), "text") == null
                        ? plain(member.getKey()) + " " + amount("settings", code, member.getValue(), "")
                        : words.word(MEMBERS_OF_SETTINGS, member.getKey(), "text") + " "
                                + amount(MEMBERS_OF_SETTINGS, member.getKey(), member.getValue(), ""))
                .toList();
    }

    private String amount(String list, String code, JsonNode value, String unit) {
        if (value.isObject()) {
            return value.properties().stream()
                    .map(member -> ofWhat(member.getKey()) + " " + amount(list, code, member.getValue(), unit))
                    .collect(Collectors.joining(", "));
        }
        if (!value.isNumber()) {
            return flat(value);
        }
        if ("percent".equals(words.optional(list, code, "as"))) {
            return PlainWords.measure(value.decimalValue().movePointRight(2), "%");
        }
        return PlainWords.measure(value.decimalValue(), unit.isEmpty() ? words.optional(list, code, "unit") : unit);
    }

    /** What one of several values is of; a number is a level of access. */
    private static String ofWhat(String member) {
        return member.chars().allMatch(Character::isDigit)
                ? ComposeSheet.access(Integer.parseInt(member))
                : plain(member);
    }

    private static String address(CatalogueKind list, String code) {
        return "/rulebook/" + list + "/" + code;
    }

    private List<RulebookEntry.Item> items(String code, String member, JsonNode value) {
        if (value.isMissingNode() || value.isNull() || (value.isContainerNode() && value.isEmpty())) {
            return List.of();
        }
        if (member.equals("weights")) {
            List<RulebookEntry.Item> weights = new ArrayList<>();
            value.properties()
                    .forEach(weight -> weights.add(known(
                            words.word("weights", weight.getKey(), "text") + ": weight "
                                    + number(weight.getValue().path("value")),
                            weight.getValue())));
            return weights;
        }
        if (member.equals("says")) {
            return setting(code, value).stream()
                    .map(said -> new RulebookEntry.Item(said, null, null))
                    .toList();
        }
        if (member.equals("values")) {
            RegimeWords regime = new RegimeWords(words);
            return ComposeSheet.stream(value)
                    .flatMap(item -> Stream.ofNullable(
                                    regime.of(item.path("about").asText(), item.path("says")))
                            .map(text -> known(text, item)))
                    .toList();
        }
        return (value.isArray() ? ComposeSheet.stream(value) : Stream.of(value))
                .map(item -> item(member, item))
                .toList();
    }

    private RulebookEntry.Item item(String member, JsonNode item) {
        return switch (member) {
            case "provedBy", "refutedBy" ->
                new RulebookEntry.Item(
                        PlainWords.sentence(String.join(
                                ", and ",
                                ComposeSheet.stream(item)
                                        .map(named -> named.path("text").asText())
                                        .toList())),
                        null,
                        null);
            case "evidence" -> evidence(item);
            case "leadsTo" ->
                new RulebookEntry.Item(
                        PlainWords.sentence(item.path("text").asText()),
                        existing(CatalogueKind.CAUSES, item.path("code").asText()),
                        null);
            case "makesScope" ->
                new RulebookEntry.Item(
                        words.line(
                                        item.path("action").asText(),
                                        item.path("item").asText(),
                                        "") + ", " + scope(item),
                        null,
                        null);
            case "minutes", "bothSides", "withoutCause" -> known(measured(member, item), item);
            case "access" -> new RulebookEntry.Item(PlainWords.sentence(ComposeSheet.access(item.asInt())), null, null);
            case "findings", "answers" -> new RulebookEntry.Item(PlainWords.sentence(answer(item)), null, null);
            case "reason", "verify", "stop", "tools" ->
                new RulebookEntry.Item(PlainWords.sentence(item.asText()), null, null);
            case "file", "version" -> new RulebookEntry.Item(item.asText(), null, null);
            case "since", "until" -> new RulebookEntry.Item(NumbersWords.day(item.asText()), null, null);
            default -> linked(member, item.asText());
        };
    }

    /** What was found, or of which part that it is sound or could not be looked at. */
    private String answer(JsonNode item) {
        String text = item.path("text").asText();
        return item.hasNonNull("condition") && !item.hasNonNull("finding")
                ? words.named(item.path("component").asText()) + ": " + text
                : text;
    }

    private RulebookEntry.Item linked(String member, String code) {
        CatalogueKind list = LEADS_TO.get(member);
        String address = list == null ? null : existing(list, code);
        return new RulebookEntry.Item(
                address != null && list == CatalogueKind.CAUTIONS
                        ? catalogue
                                .written(list, code)
                                .map(caution -> caution.path("text").asText())
                                .orElse(code)
                        : PlainWords.sentence(words.named(code)),
                address,
                null);
    }

    private RulebookEntry.Item evidence(JsonNode item) {
        boolean finding = item.path("finding").asBoolean();
        String text = PlainWords.sentence(item.path("text").asText()) + " ("
                + reach(item) + ", in "
                + number(item.at("/strength/value").decimalValue().movePointRight(2))
                + " of " + IN_A_HUNDRED + " cases" + (finding ? ", found by a look)" : ")");
        RulebookEntry.Item known = known(text, item.path("strength"));
        return new RulebookEntry.Item(
                known.text(),
                finding
                        ? null
                        : existing(CatalogueKind.SYMPTOMS, item.path("code").asText()),
                known.known());
    }

    /** Where it shows, seen from the cause; what belongs to the axle or the vehicle has no wheel. */
    private String reach(JsonNode item) {
        String level = item.path("finding").asBoolean()
                ? WHEEL
                : catalogue
                        .written(CatalogueKind.SYMPTOMS, item.path("code").asText())
                        .map(symptom -> symptom.path("at").asText())
                        .orElse(WHEEL);
        if (level.equals(WHEEL) || !item.path("at").asText().equals("same-wheel")) {
            return plain(item.path("at").asText());
        }
        return level.equals("vehicle") ? "whole vehicle" : "same axle";
    }

    private @Nullable String existing(CatalogueKind list, String code) {
        return catalogue.written(list, code).isPresent() ? address(list, code) : null;
    }

    private static String measured(String member, JsonNode value) {
        return member.equals("minutes")
                ? number(value.path("value")) + " min"
                : "in " + number(value.path("value").decimalValue().movePointRight(2)) + " of " + IN_A_HUNDRED
                        + " cases";
    }

    private static RulebookEntry.Item known(String text, JsonNode value) {
        String standing = plain(value.path("standing").asText());
        String source = value.path("source").asText("");
        return new RulebookEntry.Item(
                PlainWords.sentence(text), null, source.isEmpty() ? standing : standing + ", " + source);
    }

    private static String scope(JsonNode mark) {
        return PlainWords.extent(mark.path("extent").asText())
                + (mark.has("on") ? ", " + plain(mark.path("on").asText()) + " brakes" : "");
    }

    /** A value as its file writes it, without its brackets. */
    private static String flat(JsonNode value) {
        if (value.isObject()) {
            return value.properties().stream()
                    .map(member -> plain(member.getKey()) + " " + flat(member.getValue()))
                    .collect(Collectors.joining("; "));
        }
        if (value.isArray()) {
            return String.join(
                    ", ", ComposeSheet.stream(value).map(ReadRulebook::flat).toList());
        }
        return value.asText();
    }

    private static String number(JsonNode value) {
        return number(value.decimalValue());
    }

    private static String number(BigDecimal value) {
        return PlainWords.plain(value);
    }

    private static String plain(String code) {
        return code.replace('-', ' ');
    }
}
