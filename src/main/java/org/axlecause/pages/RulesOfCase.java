package org.axlecause.pages;

import com.fasterxml.jackson.databind.JsonNode;
import jakarta.enterprise.context.ApplicationScoped;
import java.math.BigDecimal;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.axlecause.access.Actor;
import org.axlecause.catalogue.Catalogue;
import org.axlecause.catalogue.CatalogueKind;
import org.axlecause.shared.Units;

/** Lists the rules that a case's conclusions name, with what they concluded from what. */
@ApplicationScoped
class RulesOfCase {

    /** The id of an entry behind a fact, such as (QS-20706-qs-10482-06). */
    private static final Pattern ENTRY = Pattern.compile(" \\((?=[^() ]*[0-9])[^() ]*-[^() ]+\\)");

    /** The kind of a figure before its place, such as peak axle 2 left = 590 N. */
    private static final Pattern FIGURE =
            Pattern.compile("\\b([a-z-]+) (?=(?:axle [0-9]+(?: left| right)?|vehicle) = )");

    private static final Pattern THRESHOLD = Pattern.compile("\\b([a-z-]+) = ([0-9.]+)(?=,|$)");
    private static final Pattern LINE =
            Pattern.compile("^([a-z-]+) ([a-z-]+)(?= at .*\\((?:required|recommended|optional)\\)$)");
    private static final Pattern NOT_READ = Pattern.compile("\\(([a-z]+): secondary\\)");
    private static final Pattern CLAUSE = Pattern.compile("policy clause ([a-z-]+)");

    private final PrintSheet printSheet;
    private final Catalogue catalogue;
    private final PlainWords words;

    RulesOfCase(PrintSheet printSheet, Catalogue catalogue, PlainWords words) {
        this.printSheet = printSheet;
        this.catalogue = catalogue;
        this.words = words;
    }

    /**
     * Rules of one kind that spoke in a case.
     *
     * @param kind what they conclude, in words
     * @param rules the rules by id
     */
    public record Group(String kind, List<Rule> rules) {}

    /**
     * A rule that spoke in a case.
     *
     * @param rule its id
     * @param title what it is for
     * @param says what it says
     * @param source document and section, or whose knowledge it is
     * @param facts what it spoke from
     */
    public record Rule(String rule, String title, String says, String source, List<String> facts) {}

    /** The rules that spoke, by kind; refuses where there is no such case or the actor may not see it. */
    List<Group> groups(String reference, Actor actor) {
        PrintSheet.OnPage page = printSheet.onPage(reference, actor);
        Map<String, JsonNode> first = new TreeMap<>(
                Comparator.<String>comparingInt(ReadRulebook::turnOfRule).thenComparing(Comparator.naturalOrder()));
        Map<String, SortedSet<String>> facts = new TreeMap<>();
        for (JsonNode because : page.document().findValues("because")) {
            for (JsonNode reason : because) {
                if (reason.has("rule")) {
                    String rule = reason.path("rule").asText();
                    first.putIfAbsent(rule, reason);
                    reason.path("facts")
                            .forEach(fact -> facts.computeIfAbsent(rule, none -> new TreeSet<>())
                                    .add(inWords(fact.asText(), reference, page.spoken())));
                }
            }
        }
        return first.entrySet().stream()
                .map(spoke -> rule(spoke.getKey(), spoke.getValue(), facts))
                .collect(Collectors.groupingBy(
                        rule -> ReadRulebook.kindOfRule(rule.rule()), LinkedHashMap::new, Collectors.toList()))
                .entrySet()
                .stream()
                .map(group -> new Group(group.getKey(), group.getValue()))
                .toList();
    }

    private Rule rule(String rule, JsonNode reason, Map<String, SortedSet<String>> facts) {
        return new Rule(
                rule,
                catalogue
                        .written(CatalogueKind.RULES, rule)
                        .map(written -> PlainWords.sentence(written.path("text").asText()))
                        .orElse(""),
                reason.path("says").asText(),
                reason.path("source").asText(),
                List.copyOf(facts.getOrDefault(rule, new TreeSet<>())));
    }

    /** A fact without the ids of its entries, codes and places in words. */
    private String inWords(String fact, String reference, Spoken spoken) {
        String said = ENTRY.matcher(fact).replaceAll("").replaceAll(" ?" + Pattern.quote(reference) + "[^ ,;)]*", "");
        said = CLAUSE.matcher(said).replaceAll(found -> Matcher.quoteReplacement("policy: " + meaning(found)));
        said = THRESHOLD.matcher(said).replaceAll(found -> Matcher.quoteReplacement(threshold(found)));
        said = FIGURE.matcher(said)
                .replaceAll(found -> Matcher.quoteReplacement(words.word("figures", found.group(1), "text") + ", "));
        said = LINE.matcher(said)
                .replaceAll(found -> Matcher.quoteReplacement(words.line(found.group(1), found.group(2), "")));
        said = NOT_READ.matcher(said)
                .replaceAll("($1 as quoted elsewhere)")
                .replace("brake of vehicle", "brake of the whole vehicle")
                .replace("(final)", "(last test)");
        return spoken.say(words.compared(said)).replaceAll("(?<=[a-z])-(?=[a-z])", " ");
    }

    private String meaning(MatchResult clause) {
        return catalogue
                .written(CatalogueKind.SETTINGS, clause.group(1))
                .map(setting -> setting.at("/says/means").asText())
                .filter(means -> !means.isEmpty())
                .orElse(clause.group(1));
    }

    /** What a threshold means and its value, which a fact gives in the unit that is reckoned with. */
    private String threshold(MatchResult found) {
        return catalogue
                .written(CatalogueKind.SETTINGS, found.group(1))
                .map(setting -> setting.at("/says/unit").asText())
                .filter(unit -> !unit.isEmpty())
                .map(unit -> meaning(found) + ": "
                        + PlainWords.measure(Units.fromBase(new BigDecimal(found.group(2)), unit), unit))
                .orElse(found.group());
    }
}
