package org.axlecause.pages;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.axlecause.access.Actor;
import org.axlecause.catalogue.Catalogue;
import org.axlecause.catalogue.CatalogueKind;
import org.axlecause.facts.EntryType;
import org.axlecause.facts.FitnessLevel;
import org.axlecause.facts.QuestionCode;
import org.axlecause.shared.Json;

/** Makes of a case document what the pages of bay and desk show of it. */
@ApplicationScoped
class ShowCase {

    /** At most so many suspects are named; the others are only counted. */
    private static final int MOST_SUSPECTS = 6;

    private static final int PERCENT = 100;
    private static final List<String> PLACE = List.of("axle", "side", "spot", "circuit");
    private static final List<String> TELLING = List.of("component", "condition", "agent", "extent");
    private static final Set<String> BESIDE_THE_ANSWER = Set.of("check", "measurement", "note");
    private static final String NOT_CURED = "not-cured";
    private static final Set<String> MISSED = Set.of(NOT_CURED, "improved");
    private static final Set<String> MAY_CHANGE_THE_WORK =
            Set.of(QuestionCode.PLACE_NOT_LOOKED_AT.toString(), QuestionCode.SCOPE_PROVISIONAL.toString());
    private static final Set<String> MAY_BE_DECIDED_BESIDE = Set.of("in-work", "to-verify", "verified");
    private static final String NOT_SEEN_SINCE = " \u2013 not looked at since the work";
    private static final String RULES_OF_PROOF = "OUT-";
    private static final Pattern FINDING = Pattern.compile(".* \\(([^()]+)\\)");
    private static final Pattern OPEN_LINE = Pattern.compile("open: ([a-z-]+) ([a-z-]+)(.*)");
    private static final Pattern BESIDE_WHAT_IS_OPEN = Pattern.compile(" \\([^)]*\\)$| at vehicle$");
    private static final Pattern READING = Pattern.compile("(peak|drag)Axle(\\d+)(Left|Right)");

    private static final Map<String, CaseView.State> STATES = Map.of(
            "open", new CaseView.State("Cause open", "waits for the bay: measure or look"),
            "scoped", new CaseView.State("Work proposed", "waits for the customer's decisions on the work"),
            "in-work", new CaseView.State("In work", "waits for the bay: do the agreed work"),
            "to-verify", new CaseView.State("Work done", "waits for the bay: the proof by the last roller test"),
            "verified", new CaseView.State("Cure proven", "waits for the desk: hand over"),
            "closed", new CaseView.State("Closed", "nothing is waited for"));

    private static final Map<String, String> WAITS_OF_MANY = Map.of(
            "open",
            "waits for the bay: enter the vehicle, measure or look; or for the workshop's own judgement",
            "in-work",
            "waits for the bay: do the agreed work; or for decisions on work that is not decided yet",
            "to-verify",
            "waits for the bay: the proof by the last roller test, or finding out why it was not passed",
            "verified",
            "waits for the desk: hand over, or decisions on work that is not decided yet");

    private final PrintSheet printSheet;
    private final Catalogue catalogue;
    private final PlainWords words;

    ShowCase(PrintSheet printSheet, Catalogue catalogue, PlainWords words) {
        this.printSheet = printSheet;
        this.catalogue = catalogue;
        this.words = words;
    }

    /** A status in words. */
    static CaseView.State state(String status) {
        return STATES.getOrDefault(status, new CaseView.State(status, ""));
    }

    /** The status of all cases of a list in words: each waits for one of these. */
    static CaseView.State stateOfMany(String status) {
        CaseView.State state = state(status);
        return new CaseView.State(state.name(), WAITS_OF_MANY.getOrDefault(status, state.waits()));
    }

    /** The case; refuses where there is none or the actor may not see it. */
    CaseView show(String reference, Actor actor) {
        PrintSheet.OnPage found = printSheet.onPage(reference, actor);
        JsonNode document = found.document();
        int axles = ComposeSheet.axles(document);
        String status = document.path("status").asText("open");
        List<JsonNode> standing = ComposeSheet.stream(document.path("causes"))
                .filter(cause -> !cause.path("standing").asText().equals("ruled-out"))
                .toList();
        Spoken spoken = found.spoken();
        List<CaseView.Choice> decisions = decisions(document, found.sheet());
        List<CaseView.Suspect> suspects = new ArrayList<>();
        for (JsonNode cause : standing) {
            if (cause.path("probability").asDouble() >= ComposeSheet.WORTH_NAMING && suspects.size() < MOST_SUSPECTS) {
                suspects.add(suspect(cause, suspects.size() + 1, document.path("symptoms"), axles, spoken));
            }
        }
        return new CaseView(
                document.path("reference").asText(),
                status,
                new CaseView.State(state(status).name(), waits(document, status, found.sheet(), decisions)),
                document.path("judging").asText().equals("failed"),
                isRestricted(document),
                found.sheet(),
                document.at("/verification/outcome").asText().equals(NOT_CURED),
                suspects,
                standing.size() - suspects.size(),
                ComposeSheet.stream(document.path("nextChecks"))
                        .map(check -> ask(check, found.findings().values(), axles))
                        .toList(),
                axles(document, axles),
                stage(document),
                has(document, EntryType.ROLLER_TEST_RECORDED),
                decisions,
                mayChange(document, spoken, axles),
                options(CatalogueKind.COMPONENTS),
                options(CatalogueKind.CONDITIONS),
                stillOpen(document, status, found.sheet(), found.findings(), spoken, axles),
                afterWork(document, status, found.findings(), axles),
                CaseView.Plan.of(found.sheet().steps()));
    }

    /** What this case waits for, which may be more than its status tells. */
    private static String waits(JsonNode document, String status, Sheet sheet, List<CaseView.Choice> decisions) {
        if (status.equals("open") && document.at("/vehicle/axles").isEmpty()) {
            return "waits for the bay: enter the vehicle";
        }
        if (status.equals("open") && sheet.outOfRange() != null) {
            return "waits for the workshop's own judgement";
        }
        if (status.equals("scoped") && sheet.provisional()) {
            return "waits for the customer's decisions on the work, which may still change";
        }
        if (status.equals("to-verify")
                && MISSED.contains(document.at("/verification/outcome").asText())) {
            return alsoFor(decisions, "waits for the bay: the last test was not passed, find out why");
        }
        return MAY_BE_DECIDED_BESIDE.contains(status)
                ? alsoFor(decisions, state(status).waits())
                : state(status).waits();
    }

    /** What is waited for, after the decisions on work that was left open, came up or changed since the last one. */
    private static String alsoFor(List<CaseView.Choice> decisions, String waits) {
        return decisions.stream().anyMatch(choice -> choice.line().change() != null)
                ? waits.replaceFirst("^waits for ", "waits for decisions on work that is not decided yet, and for ")
                : waits;
    }

    private static boolean isRestricted(JsonNode document) {
        return !document.at("/fitness/level").asText().equals(FitnessLevel.NO_RESTRICTION_FOUND.toString());
    }

    /** Where something is still to be looked at or settled, and what, so that the work may become another. */
    private static List<String> mayChange(JsonNode document, Spoken spoken, int axles) {
        return ComposeSheet.stream(document.path("questions"))
                .filter(question ->
                        MAY_CHANGE_THE_WORK.contains(question.path("code").asText()))
                .filter(question -> !isOfProof(question))
                .map(question -> asked(question, spoken, axles))
                .distinct()
                .toList();
    }

    private static String asked(JsonNode question, Spoken spoken, int axles) {
        return PlainWords.sentence(PlainWords.placeOrVehicle(question.path("place"), axles)) + ": "
                + spoken.say(question.path("says").asText());
    }

    /** Whether a question asks for what proves the work and not for what may change it. */
    private static boolean isOfProof(JsonNode question) {
        return question.at("/because/0/rule").asText().startsWith(RULES_OF_PROOF);
    }

    /** What keeps the repair from being proven; a cause that a finding of that name proved is not said beside it. */
    private List<String> stillOpen(
            JsonNode document, String status, Sheet sheet, Map<String, JsonNode> findings, Spoken spoken, int axles) {
        Map<String, String> byName = ComposeSheet.stream(document.at("/verification/open"))
                .map(JsonNode::asText)
                .collect(Collectors.toMap(
                        open -> BESIDE_WHAT_IS_OPEN
                                .matcher(open)
                                .replaceFirst("")
                                .replaceFirst(" confirmed\\b", "")
                                .replace(' ', '-'),
                        Function.identity(),
                        (one, twin) -> FINDING.matcher(twin).matches() ? twin : one,
                        LinkedHashMap::new));
        List<String> open = new ArrayList<>();
        byName.values()
                .forEach(said -> open.add(
                        stillOpen(said, spoken) + (isLeft(said, document, status, findings) ? NOT_SEEN_SINCE : "")));
        ComposeSheet.stream(document.path("questions"))
                .filter(ShowCase::isOfProof)
                .filter(question ->
                        MAY_CHANGE_THE_WORK.contains(question.path("code").asText()))
                .forEach(question -> open.add(asked(question, spoken, axles)));
        if (!sheet.measuredAgain()) {
            open.add("The last roller test");
        }
        return open;
    }

    private String stillOpen(String open, Spoken spoken) {
        String said = BESIDE_WHAT_IS_OPEN.matcher(open).replaceFirst("");
        Matcher line = OPEN_LINE.matcher(said);
        return PlainWords.sentence(
                line.matches()
                        ? words.line(line.group(1), line.group(2), "") + spoken.say(line.group(3))
                        : plain(spoken.say(words.compared(said)))
                                .replace("service brake", PlainWords.brake("service")));
    }

    /** Whether it is a finding at which work was done and nobody has looked again. */
    private static boolean isLeft(String open, JsonNode document, String status, Map<String, JsonNode> findings) {
        return left(document, status, findings).anyMatch(finding -> open.equals(finding.open()));
    }

    private record Left(String open, JsonNode finding) {}

    private static Stream<Left> left(JsonNode document, String status, Map<String, JsonNode> findings) {
        if (!has(document, EntryType.WORK_REPORTED)) {
            return Stream.empty();
        }
        return ComposeSheet.stream(document.at("/verification/open")).flatMap(open -> {
            Matcher found = FINDING.matcher(open.asText());
            JsonNode finding = found.matches() ? findings.get(found.group(1)) : null;
            return finding == null || (status.equals("in-work") && isWorkAhead(document, finding))
                    ? Stream.of()
                    : Stream.of(new Left(open.asText(), finding));
        });
    }

    /** What was wrong, was worked on and has not been looked at since, so that the cure is not proven yet. */
    private static List<CaseView.AfterWork> afterWork(
            JsonNode document, String status, Map<String, JsonNode> findings, int axles) {
        return left(document, status, findings)
                .map(left -> afterWork(left.finding(), axles))
                .toList();
    }

    /** Whether a step of the plan at that wheel or its axle is still to be done. */
    private static boolean isWorkAhead(JsonNode document, JsonNode finding) {
        return ComposeSheet.stream(document.path("workPlan"))
                .filter(step -> !step.has("outcome"))
                .map(step -> step.path("place"))
                .filter(place -> place.has("axle") && place.path("axle").equals(finding.path("axle")))
                .anyMatch(place -> !place.has("side") || place.path("side").equals(finding.path("side")));
    }

    private static CaseView.AfterWork afterWork(JsonNode finding, int axles) {
        String part = PlainWords.sentence(plain(finding.path("component").asText())) + ", "
                + PlainWords.placeOrVehicle(finding, axles);
        String condition = finding.path("condition").asText();
        String form = newForm();
        return new CaseView.AfterWork(
                part,
                plain(condition),
                new CaseView.Reply(
                        form,
                        form,
                        part,
                        EntryType.FINDING_RECORDED.toString(),
                        List.of(),
                        List.of(
                                afterWork(finding, "sound", "Sound now"),
                                afterWork(finding, condition, "Still " + plain(condition)))));
    }

    private static CaseView.Answer afterWork(JsonNode finding, String condition, String says) {
        ObjectNode data = Json.mapper().createObjectNode();
        data.put("stage", "after-work");
        data.set("component", finding.path("component"));
        data.put("condition", condition);
        PLACE.stream().filter(finding::has).forEach(member -> data.set(member, finding.path(member)));
        return new CaseView.Answer(says, data.toString(), false);
    }

    private CaseView.Suspect suspect(JsonNode cause, int number, JsonNode symptoms, int axles, Spoken spoken) {
        boolean confirmed = cause.path("standing").asText().equals("confirmed");
        long chance = Math.round(cause.path("probability").asDouble() * PERCENT);
        return new CaseView.Suspect(
                cause.path("code").asText(),
                PlainWords.sentence(PlainWords.placeOrVehicle(cause.path("place"), axles)),
                cause.path("text").asText(),
                confirmed ? "found" : "suspected, about " + Math.max(1, chance) + " in 100, not proven",
                ComposeSheet.stream(cause.path("because"))
                        .map(reason -> elsewhere(reason, cause, symptoms, axles)
                                + reason.path("says").asText())
                        .distinct()
                        .toList(),
                ComposeSheet.stream(cause.path("evidence"))
                        .filter(evidence -> evidence.path("decibans").asDouble() != 0)
                        .map(evidence -> weighed(
                                spoken.say(evidence.path("says").asText()),
                                evidence.path("decibans").asDouble() > 0 ? "speaks for it" : "speaks against it"))
                        .distinct()
                        .toList(),
                cause.path("chain").size() > 1 ? ChainPicture.of("chain-" + number, cause.path("chain"), axles) : null);
    }

    /** The place of what a reason tells of, where the cause is at another one; empty where it is not. */
    private static String elsewhere(JsonNode reason, JsonNode cause, JsonNode symptoms, int axles) {
        return ComposeSheet.stream(symptoms)
                .filter(symptom -> ComposeSheet.stream(symptom.path("because")).anyMatch(reason::equals))
                .map(symptom -> symptom.path("place"))
                .filter(place -> !place.equals(cause.path("place")))
                .map(place -> PlainWords.place(place, axles))
                .filter(place -> !place.isEmpty())
                .map(place -> PlainWords.sentence(place) + ": ")
                .findFirst()
                .orElse("");
    }

    private static String weighed(String says, String way) {
        String sentence = PlainWords.sentence(says);
        return sentence.endsWith(way) ? sentence : sentence + " – " + way;
    }

    private CaseView.Ask ask(JsonNode check, Collection<JsonNode> findings, int axles) {
        List<JsonNode> answers = ComposeSheet.stream(check.path("answers")).toList();
        Map<Boolean, List<JsonNode>> bySaid = answers.stream()
                .collect(Collectors.partitioningBy(
                        answer -> findings.stream().anyMatch(finding -> isSaid(answer.path("data"), finding))));
        return new CaseView.Ask(
                check.path("check").asText(),
                PlainWords.sentence(
                        check.path("text").asText(plain(check.path("check").asText()))),
                PlainWords.sentence(PlainWords.placeOrVehicle(check.path("place"), axles)),
                ComposeSheet.effort(check),
                ComposeSheet.stream(check.path("cautions"))
                        .map(code -> textOf(CatalogueKind.CAUTIONS, code.asText()))
                        .toList(),
                ComposeSheet.stream(check.path("wouldSettle"))
                        .map(cause ->
                                textOf(CatalogueKind.CAUSES, cause.path("code").asText()) + ", "
                                        + PlainWords.placeOrVehicle(cause.path("place"), axles))
                        .toList(),
                replies(bySaid.getOrDefault(false, List.of()), answers, axles),
                bySaid.getOrDefault(true, List.of()).stream()
                        .map(answer -> words(answer, answers, axles))
                        .toList());
    }

    /** Whether a finding says what an answer would; readings and notes aside. */
    private static boolean isSaid(JsonNode answer, JsonNode finding) {
        return answer.has("component")
                && answer.properties().stream()
                        .filter(member -> !BESIDE_THE_ANSWER.contains(member.getKey()))
                        .allMatch(member -> member.getValue().equals(finding.path(member.getKey())));
    }

    /** The answers by the numbers that they need: what several of them need is asked for once. */
    private List<CaseView.Reply> replies(List<JsonNode> open, List<JsonNode> all, int axles) {
        String entry = newForm();
        Map<List<JsonNode>, List<JsonNode>> byBlanks = open.stream()
                .collect(Collectors.groupingBy(
                        answer -> List.of(answer.path("type"), answer.path("blanks")),
                        LinkedHashMap::new,
                        Collectors.toList()));
        List<CaseView.Reply> replies = new ArrayList<>();
        for (List<JsonNode> alike : byBlanks.values()) {
            replies.add(new CaseView.Reply(
                    entry,
                    entry + "-" + replies.size(),
                    null,
                    alike.get(0).path("type").asText(),
                    ComposeSheet.stream(alike.get(0).path("blanks"))
                            .map(blank -> blank(blank, axles))
                            .toList(),
                    alike.stream()
                            .map(answer -> new CaseView.Answer(
                                    words(answer, all, axles),
                                    answer.path("data").toString(),
                                    isRun(answer)))
                            .toList()));
        }
        return replies;
    }

    /** Whether it hands over the readings of a run on the rollers. */
    private static boolean isRun(JsonNode answer) {
        return answer.path("type").asText().equals(EntryType.ROLLER_TEST_RECORDED.toString());
    }

    /** What an answer says, and how it differs from others that say the same. */
    private static String words(JsonNode answer, List<JsonNode> all, int axles) {
        JsonNode data = answer.path("data");
        if (isRun(answer)) {
            return "Save these readings";
        }
        if (data.path("condition").asText().equals("not-accessible")
                && all.stream().anyMatch(ShowCase::isRun)) {
            return "Can't be done";
        }
        List<JsonNode> twins = all.stream()
                .filter(other -> other.path("says").equals(answer.path("says")))
                .map(other -> other.path("data"))
                .toList();
        List<String> own = new ArrayList<>();
        if (PLACE.stream().anyMatch(member -> differ(twins, member))) {
            own.add(PlainWords.place(data, axles));
        }
        TELLING.stream()
                .filter(member -> differ(twins, member))
                .forEach(member -> own.add(plain(data.path(member).asText())));
        own.removeIf(String::isEmpty);
        String says = PlainWords.sentence(plain(answer.path("says").asText()));
        if (own.isEmpty()) {
            return says;
        }
        boolean tellsTheState = differ(twins, "condition") && !data.has("agent");
        String what =
                tellsTheState ? PlainWords.sentence(plain(data.path("component").asText())) : says;
        return what + ": " + String.join(", ", own);
    }

    private static boolean differ(List<JsonNode> twins, String member) {
        return twins.stream().map(twin -> twin.path(member)).distinct().count() > 1;
    }

    private CaseView.Blank blank(JsonNode blank, int axles) {
        String name = blank.path("name").asText();
        Matcher reading = READING.matcher(name);
        String label = reading.matches()
                ? PlainWords.sentence(PlainWords.axle(Integer.parseInt(reading.group(2)), axles)) + ", "
                        + (reading.group(3).equals("Left") ? "left" : "right") + " wheel: "
                        + (reading.group(1).equals("peak") ? "highest force" : "force with no brake applied")
                : PlainWords.sentence(words.named(blank.path("quantity").asText(name)));
        String unit = blank.path("unit").asText();
        if (blank.path("quantity").asText().equals("lever-travel")) {
            return new CaseView.Blank(name, label + " in clicks");
        }
        return new CaseView.Blank(name, unit.isEmpty() || unit.equals("1") ? label : label + " in " + unit);
    }

    private static List<CaseView.AxleView> axles(JsonNode document, int axles) {
        return ComposeSheet.stream(document.at("/vehicle/axles"))
                .map(axle -> new CaseView.AxleView(
                        axle.path("number").asInt(),
                        PlainWords.sentence(PlainWords.axle(axle.path("number").asInt(), axles)),
                        axle.path("brake").asText().startsWith("drum"),
                        axle.has("parkingBrake")
                                && !axle.path("parkingBrake").asText().equals("none")))
                .toList();
    }

    private static String stage(JsonNode document) {
        if (has(document, EntryType.WORK_REPORTED)) {
            return "final";
        }
        return has(document, EntryType.ROLLER_TEST_RECORDED) ? "diagnostic" : "arrival";
    }

    private static boolean has(JsonNode document, EntryType type) {
        return ComposeSheet.stream(document.path("timeline"))
                .anyMatch(entry -> entry.path("type").asText().equals(type.toString())
                        && !entry.path("withdrawn").asBoolean());
    }

    private static List<CaseView.Choice> decisions(JsonNode document, Sheet sheet) {
        Map<String, JsonNode> lines = ComposeSheet.stream(document.path("scope"))
                .collect(Collectors.toMap(line -> line.path("id").asText(), Function.identity(), (one, twin) -> one));
        return sheet.groups().stream()
                .flatMap(group -> group.lines().stream())
                .filter(line -> lines.containsKey(line.id()))
                .filter(line -> List.of("proposed", "agreed", "refused", "later")
                        .contains(lines.getOrDefault(line.id(), document)
                                .path("standing")
                                .asText()))
                .map(line -> choice(line, lines.getOrDefault(line.id(), document)))
                .toList();
    }

    private static CaseView.Choice choice(Sheet.Line line, JsonNode written) {
        ObjectNode shown = Json.mapper().createObjectNode();
        shown.set("necessity", written.path("necessity"));
        if (written.path("quantity").has("value")) {
            shown.set("quantity", written.at("/quantity/value"));
        }
        if (written.at("/estimate/gross").isObject()
                && written.at("/estimate/missing").isEmpty()) {
            shown.set("estimate", written.at("/estimate/gross"));
        }
        String standing = written.path("standing").asText();
        return new CaseView.Choice(
                line,
                written.path("necessity").asText(),
                written.path("agreementBy").asText("customer"),
                shown.toString(),
                standing.equals("proposed") ? "" : standing);
    }

    private List<CaseView.Option> options(CatalogueKind kind) {
        return catalogue.written(kind).stream()
                .map(entry -> new CaseView.Option(
                        entry.path("code").asText(),
                        PlainWords.sentence(plain(entry.path("code").asText()))))
                .sorted((one, other) -> one.text().compareTo(other.text()))
                .toList();
    }

    private String textOf(CatalogueKind kind, String code) {
        return catalogue
                .written(kind, code)
                .map(entry -> PlainWords.sentence(entry.path("text").asText()))
                .orElse(plain(code));
    }

    /** What may stand in the way of a step, or of anything where the case has no such step. */
    InTheWay inTheWay(String reference, String step, Actor actor) {
        JsonNode document = printSheet.onPage(reference, actor).document();
        JsonNode place = ComposeSheet.stream(document.path("workPlan"))
                .filter(planned -> planned.path("id").asText().equals(step))
                .map(planned -> planned.path("place"))
                .findFirst()
                .orElse(Json.mapper().createObjectNode());
        String layout = ComposeSheet.stream(document.at("/vehicle/axles"))
                .filter(axle -> place.has("axle")
                        && axle.path("number").asInt() == place.path("axle").asInt())
                .map(axle -> axle.path("brake").asText())
                .findFirst()
                .orElse(null);
        return new InTheWay(
                document.path("reference").asText(),
                PlainWords.sentence(PlainWords.placeOrVehicle(place, ComposeSheet.axles(document))),
                (place.path("axle").asText() + " " + place.path("side").asText()).strip(),
                place.has("side") ? List.of() : axles(document, ComposeSheet.axles(document)),
                newForm(),
                words.obstacles(layout).stream()
                        .map(obstacle ->
                                new CaseView.Option(obstacle.component() + " " + obstacle.condition(), obstacle.text()))
                        .toList());
    }

    /** Id of a form that is shown for the first time. */
    static String newForm() {
        return UUID.randomUUID().toString();
    }

    private static String plain(String code) {
        return code.replace('-', ' ');
    }
}
