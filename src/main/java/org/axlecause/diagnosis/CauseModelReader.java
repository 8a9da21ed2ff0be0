package org.axlecause.diagnosis;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.axlecause.facts.Agent;
import org.axlecause.facts.Bound;
import org.axlecause.facts.BrakeLayout;
import org.axlecause.facts.BrakeSystem;
import org.axlecause.facts.CauseCode;
import org.axlecause.facts.CautionCode;
import org.axlecause.facts.CheckCode;
import org.axlecause.facts.Component;
import org.axlecause.facts.Condition;
import org.axlecause.facts.Extent;
import org.axlecause.facts.MeasuredQuantity;
import org.axlecause.facts.ParkingLayout;
import org.axlecause.facts.ScopeAction;
import org.axlecause.facts.ScopeExtent;
import org.axlecause.facts.ScopeItem;
import org.axlecause.facts.Spot;
import org.axlecause.facts.SymptomCode;
import org.axlecause.facts.ThresholdCode;
import org.axlecause.facts.Verified;
import org.axlecause.shared.YamlFile;
import org.axlecause.shared.YamlNode;
import org.jspecify.annotations.Nullable;

/** Reads the files of the cause model and refuses what is wrong in them, with file, line and remedy. */
final class CauseModelReader {

    private static final String NONE = "none";

    private final Map<String, YamlFile> files = new TreeMap<>();

    final Map<SymptomCode, SymptomEvidence> symptoms = new EnumMap<>(SymptomCode.class);
    final Map<String, FindingEvidence> findings = new LinkedHashMap<>();
    final Map<String, Circumstance> circumstances = new LinkedHashMap<>();
    final Map<CauseCode, Cause> causes = new EnumMap<>(CauseCode.class);
    final Map<String, State> states = new LinkedHashMap<>();
    final List<Edge> edges = new ArrayList<>();
    final Map<CheckCode, Check> checks = new EnumMap<>(CheckCode.class);
    final List<Check.LookedOver> lookingOver = new ArrayList<>();
    final Map<MeasuredQuantity, String> units = new EnumMap<>(MeasuredQuantity.class);
    final Settings settings;

    CauseModelReader(List<YamlFile> given) {
        given.forEach(file -> files.put(file.stem(), file));
        settings = settings(root("inference"));
        readSymptoms(root("symptoms"));
        readFindings(root("findings"));
        for (YamlFile file : files.values()) {
            if (file.root().isMapping() && file.root().has("causes")) {
                readCauses(file.root());
            }
        }
        checkAllCausesAreThere();
        readChain(root("chain"));
        readChecks(root("checks"));
    }

    private YamlNode root(String stem) {
        YamlFile file = files.get(stem);
        if (file == null) {
            throw new IllegalStateException("The cause model lacks the file " + stem + ".yaml; add it to the folder.");
        }
        return file.root();
    }

    private static Settings settings(YamlNode root) {
        YamlNode strengths = root.member("strengths");
        Map<String, Double> letters = new TreeMap<>();
        for (String letter : strengths.names()) {
            letters.put(letter, probability(strengths.member(letter)));
        }
        YamlNode next = root.member("next-checks");
        YamlNode access = next.member("access-minutes");
        List<Integer> minutes = new ArrayList<>();
        for (int level = 1; level <= 4; level++) {
            minutes.add(access.whole(Integer.toString(level)));
        }
        Map<Risk, Integer> risks = new EnumMap<>(Risk.class);
        for (Risk risk : Risk.values()) {
            risks.put(risk, next.member("risk-minutes").whole(risk.toString()));
        }
        return new Settings(
                root.texts("categories"),
                letters,
                root.member("old-from").whole("drum"),
                root.member("old-from").whole("disc"),
                positive(root.member("least-weight")),
                positive(root.member("expected-faults")),
                probability(root.member("most-prior")),
                probability(root.member("finding-leak")),
                probability(root.member("explained-away")),
                positive(root.member("after-recent-work")),
                probability(root.member("shown-from")),
                probability(next.member("settled-at")),
                probability(next.member("same-scope-at")),
                probability(next.member("background")),
                positive(next.member("least-information")),
                next.whole("most"),
                List.copyOf(minutes),
                risks);
    }

    private void readSymptoms(YamlNode root) {
        for (YamlNode node : root.only("standing", "source", "symptoms").items("symptoms")) {
            node.only("code", "at", "leak", "each-wheel", "text");
            SymptomCode code = node.code("code", SymptomCode.class);
            SymptomCode eachWheel = node.optionalCode("each-wheel", SymptomCode.class);
            double leak = eachWheel == null ? probability(node.member("leak")) : 0;
            Level level = node.code("at", Level.class);
            if (symptoms.put(code, new SymptomEvidence(code, node.text("text"), level, leak, eachWheel)) != null) {
                throw node.wrong("symptom '" + code + "' stands twice", "keep one of the two");
            }
        }
        for (SymptomCode code : SymptomCode.values()) {
            if (!symptoms.containsKey(code)) {
                throw root.member("symptoms")
                        .wrong("symptom '" + code + "' is missing", "add it with place, leak and text");
            }
        }
        for (YamlNode node : root.items("symptoms")) {
            SymptomCode eachWheel = node.optionalCode("each-wheel", SymptomCode.class);
            if (eachWheel != null && symptom(eachWheel).level() != Level.WHEEL) {
                throw node.wrong(
                        "'" + eachWheel + "' is no symptom of single wheels", "name a symptom whose place is wheel");
            }
        }
    }

    private SymptomEvidence symptom(SymptomCode code) {
        SymptomEvidence found = symptoms.get(code);
        if (found == null) {
            throw new IllegalStateException("The symptom " + code + " is not in symptoms.yaml; add it there.");
        }
        return found;
    }

    private void readFindings(YamlNode root) {
        for (YamlNode node :
                root.only("standing", "source", "findings", "circumstances").items("findings")) {
            FindingEvidence finding = finding(node);
            if (findings.put(finding.code(), finding) != null) {
                throw node.wrong("finding '" + finding.code() + "' stands twice", "keep one of the two");
            }
        }
        for (YamlNode node : root.items("circumstances")) {
            node.only("code", "symptom", "shows", "recent-work", "text");
            SymptomCode symptom = node.optionalCode("symptom", SymptomCode.class);
            Circumstance circumstance = new Circumstance(
                    node.text("code"),
                    node.text("text"),
                    symptom,
                    Boolean.TRUE.equals(node.optionalFlag("shows")),
                    node.codes("recent-work", ScopeItem.class));
            if ((symptom == null) == circumstance.recentWork().isEmpty()) {
                throw node.wrong("a circumstance is a symptom or recent work", "write one of symptom, recent-work");
            }
            circumstances.put(circumstance.code(), circumstance);
        }
    }

    private static FindingEvidence finding(YamlNode node) {
        node.only(
                "code",
                "at",
                "component",
                "on",
                "condition",
                "agents",
                "checks",
                "spots",
                "extents",
                "absent-by",
                "absent-checks",
                "measured",
                "text");
        YamlNode measured = node.optional("measured");
        List<Condition> conditions = node.codes("condition", Condition.class);
        if ((measured == null) == conditions.isEmpty()) {
            throw node.wrong(
                    "finding '" + node.text("code") + "' is neither a state nor a measurement",
                    "write one of condition, measured");
        }
        return new FindingEvidence(
                node.text("code"),
                node.text("text"),
                node.code("at", Level.class),
                node.code("component", Component.class),
                node.optionalCode("on", WheelBrake.class),
                conditions,
                orNone(node, "agents", Agent.class),
                orNone(node, "checks", CheckCode.class),
                orNone(node, "spots", Spot.class),
                orNone(node, "extents", Extent.class),
                node.codes("absent-by", Condition.class),
                orNone(node, "absent-checks", CheckCode.class),
                measured == null
                        ? null
                        : new FindingEvidence.Measured(
                                measured.only("quantity", "beyond", "threshold")
                                        .code("quantity", MeasuredQuantity.class),
                                measured.code("beyond", Bound.class),
                                measured.optionalCode("threshold", ThresholdCode.class)));
    }

    private static <E extends Enum<E>> List<@Nullable E> orNone(YamlNode node, String member, Class<E> codes) {
        YamlNode written = node.optional(member);
        if (written == null) {
            return List.of();
        }
        List<@Nullable E> allowed = new ArrayList<>();
        for (YamlNode item : written.isList() ? written.items() : List.of(written)) {
            allowed.add(item.text().equals(NONE) ? null : item.code(codes));
        }
        return Collections.unmodifiableList(allowed);
    }

    private void readCauses(YamlNode root) {
        root.only("standing", "source", "causes");
        Verified standing = root.code("standing", Verified.class);
        for (YamlNode node : root.items("causes")) {
            Cause cause = cause(node, standing);
            if (causes.put(cause.code(), cause) != null) {
                throw node.wrong("cause '" + cause.code() + "' stands twice", "keep one of the two");
            }
        }
    }

    private Cause cause(YamlNode node, Verified standing) {
        node.only(
                "code",
                "text",
                "at",
                "spots",
                "brakes",
                "parking",
                "only",
                "weights",
                "both-sides",
                "shows",
                "shows-on-other-wheel",
                "shows-on-circuit",
                "leaves",
                "proved-by",
                "refuted-by",
                "excludes",
                "likelier-after",
                "asks-what-is-upstream",
                "makes-scope",
                "facts-standing",
                "facts-source");
        Level level = node.code("at", Level.class);
        List<Link> links = new ArrayList<>();
        readLinks(node.optional("shows"), false, Reach.SAME_WHEEL, links);
        readLinks(node.optional("shows-on-other-wheel"), false, Reach.OTHER_WHEEL, links);
        readLinks(node.optional("shows-on-circuit"), false, Reach.CIRCUIT_WHEELS, links);
        readLinks(node.optional("leaves"), true, Reach.SAME_WHEEL, links);
        YamlNode bothSides = node.optional("both-sides");
        if (bothSides != null && level != Level.WHEEL) {
            throw bothSides.wrong("only a cause at a wheel can be on both sides", "remove it or write at: wheel");
        }
        return new Cause(
                node.code("code", CauseCode.class),
                node.text("text"),
                level,
                node.codes("spots", Spot.class),
                node.codes("brakes", BrakeLayout.class),
                node.codes("parking", ParkingLayout.class),
                node.codes("only", Trait.class),
                weights(node.member("weights")),
                bothSides == null ? null : probability(bothSides),
                List.copyOf(links),
                grounds(node, "proved-by"),
                grounds(node, "refuted-by"),
                node.codes("excludes", CauseCode.class),
                node.codes("likelier-after", ScopeItem.class),
                Boolean.TRUE.equals(node.optionalFlag("asks-what-is-upstream")),
                signature(node),
                standing,
                node.code("facts-standing", Verified.class),
                node.text("facts-source"));
    }

    private void readLinks(@Nullable YamlNode written, boolean finding, Reach reach, List<Link> links) {
        if (written == null) {
            return;
        }
        for (String code : written.names()) {
            YamlNode strength = written.member(code);
            if (finding ? !findings.containsKey(code) : symptomOf(code) == null) {
                throw strength.wrong(
                        "there is no " + (finding ? "finding '" : "symptom '") + code + "'",
                        "mend the code or add it to " + (finding ? "findings.yaml" : "symptoms.yaml"));
            }
            FindingEvidence left = findings.get(code);
            if (finding && left != null && left.measured() != null) {
                throw strength.wrong(
                        "a measured finding is no evidence by itself", "link the state that it is recorded with");
            }
            Double value = settings.strengths().get(strength.text());
            if (value == null) {
                throw strength.wrong(
                        "strength '" + strength.text() + "' is not known",
                        "write one of " + settings.strengths().keySet());
            }
            links.add(new Link(code, finding, reach, strength.text(), value));
        }
    }

    private @Nullable SymptomEvidence symptomOf(String code) {
        return symptoms.values().stream()
                .filter(symptom -> symptom.code().toString().equals(code) && symptom.eachWheel() == null)
                .findFirst()
                .orElse(null);
    }

    private Weights weights(YamlNode node) {
        node.only("drum-old", "drum-young", "disc-old", "disc-young");
        return new Weights(
                weight(node, "drum-old"),
                weight(node, "drum-young"),
                weight(node, "disc-old"),
                weight(node, "disc-young"));
    }

    private @Nullable Double weight(YamlNode node, String member) {
        YamlNode written = node.optional(member);
        if (written == null) {
            return null;
        }
        BigDecimal weight = written.decimal();
        if (weight.signum() < 0) {
            throw written.wrong("weight " + weight + " is below none", "write 0 for rare or leave it out for never");
        }
        return Math.max(settings.leastWeight(), weight.doubleValue());
    }

    private List<List<String>> grounds(YamlNode node, String member) {
        List<List<String>> grounds = new ArrayList<>();
        for (YamlNode together : node.items(member)) {
            List<String> codes = new ArrayList<>();
            for (YamlNode code : together.items()) {
                if (!findings.containsKey(code.text()) && !circumstances.containsKey(code.text())) {
                    throw code.wrong(
                            "there is no finding or circumstance '" + code.text() + "'",
                            "mend the code or add it to findings.yaml");
                }
                codes.add(code.text());
            }
            grounds.add(List.copyOf(codes));
        }
        return List.copyOf(grounds);
    }

    private static List<ScopeMark> signature(YamlNode node) {
        List<ScopeMark> marks = new ArrayList<>();
        for (YamlNode written : node.member("makes-scope").items()) {
            String[] words = written.text().split(" ", -1);
            if (words.length != 3 && (words.length != 5 || !words[3].equals("on"))) {
                throw written.wrong(
                        "'" + written.text() + "' is no scope mark",
                        "write action, item and extent, such as renew"
                                + " shoe-set axle, and after it on drum or on disc where it is only for one");
            }
            marks.add(new ScopeMark(
                    word(written, words[0], ScopeAction.class),
                    word(written, words[1], ScopeItem.class),
                    word(written, words[2], ScopeExtent.class),
                    words.length == 3 ? null : word(written, words[4], WheelBrake.class)));
        }
        if (marks.isEmpty()) {
            throw node.wrong("'" + node.text("code") + "' makes no scope", "write what it makes the work");
        }
        return List.copyOf(marks);
    }

    private static <E extends Enum<E>> E word(YamlNode node, String word, Class<E> codes) {
        for (E constant : codes.getEnumConstants()) {
            if (constant.toString().equals(word)) {
                return constant;
            }
        }
        throw node.wrong("'" + word + "' is not a known code", "mend the word");
    }

    private void checkAllCausesAreThere() {
        for (CauseCode code : CauseCode.values()) {
            if (!causes.containsKey(code)) {
                throw new IllegalStateException(
                        "The cause " + code + " is in no file of the cause model; add it to the file of its subject.");
            }
        }
    }

    private void readChain(YamlNode root) {
        for (YamlNode node : root.only("standing", "source", "states", "edges").items("states")) {
            node.only("code", "text", "seen-by");
            for (YamlNode seen : node.items("seen-by")) {
                if (!findings.containsKey(seen.text())) {
                    throw seen.wrong("there is no finding '" + seen.text() + "'", "mend the code");
                }
            }
            State state = new State(node.text("code"), node.text("text"), node.texts("seen-by"));
            if (isCause(state.code()) || symptomOf(state.code()) != null || states.put(state.code(), state) != null) {
                throw node.wrong("the code '" + state.code() + "' is taken", "name the state otherwise");
            }
        }
        Map<String, YamlNode> lines = new LinkedHashMap<>();
        for (YamlNode node : root.items("edges")) {
            node.only("from", "to", "place");
            String from = node.text("from");
            String to = node.text("to");
            if (!isCause(from) && !states.containsKey(from)) {
                throw node.wrong("there is no cause or state '" + from + "'", "mend the code");
            }
            if (!isCause(to) && !states.containsKey(to) && symptomOf(to) == null) {
                throw node.wrong("there is no cause, state or symptom '" + to + "'", "mend the code");
            }
            Reach reach = node.optionalCode("place", Reach.class);
            edges.add(new Edge(from, to, reach == null ? Reach.SAME : reach));
            lines.put(from + " " + to, node);
        }
        refuseCircles(lines);
        refuseSymptomsWithoutChain();
    }

    private static boolean isCause(String code) {
        for (CauseCode cause : CauseCode.values()) {
            if (cause.toString().equals(code)) {
                return true;
            }
        }
        return false;
    }

    private void refuseCircles(Map<String, YamlNode> lines) {
        Set<String> done = new HashSet<>();
        for (Edge edge : edges) {
            walk(edge.from(), new ArrayList<>(), done, lines);
        }
    }

    private void walk(String code, List<String> path, Set<String> done, Map<String, YamlNode> lines) {
        if (done.contains(code)) {
            return;
        }
        path.add(code);
        for (Edge edge : edges) {
            if (edge.from().equals(code)) {
                if (path.contains(edge.to())) {
                    throw lines.getOrDefault(code + " " + edge.to(), root("chain"))
                            .wrong(
                                    "the edges run in a circle: " + String.join(", ", path) + ", " + edge.to(),
                                    "take one of these edges out");
                }
                walk(edge.to(), path, done, lines);
            }
        }
        path.remove(path.size() - 1);
        done.add(code);
    }

    private void refuseSymptomsWithoutChain() {
        for (Cause cause : causes.values()) {
            Set<String> reached = new HashSet<>();
            List<String> open = new ArrayList<>(List.of(cause.code().toString()));
            while (!open.isEmpty()) {
                String code = open.remove(open.size() - 1);
                if (reached.add(code)) {
                    edges.stream().filter(edge -> edge.from().equals(code)).forEach(edge -> open.add(edge.to()));
                }
            }
            for (Link link : cause.links()) {
                if (!link.finding() && !reached.contains(link.evidence())) {
                    throw root("chain")
                            .member("edges")
                            .wrong(
                                    "no edges lead from '" + cause.code() + "' to its symptom '" + link.evidence()
                                            + "'",
                                    "add the steps or remove the symptom from the cause");
                }
            }
        }
    }

    private void readChecks(YamlNode root) {
        root.only("standing", "source", "units", "looking-over", "checks");
        YamlNode written = root.member("units");
        for (MeasuredQuantity quantity : MeasuredQuantity.values()) {
            units.put(quantity, written.text(quantity.toString()));
        }
        Verified standing = root.code("standing", Verified.class);
        String source = root.text("source");
        for (YamlNode node : root.items("checks")) {
            Check check = check(node, standing, source);
            if (checks.put(check.code(), check) != null) {
                throw node.wrong("check '" + check.code() + "' stands twice", "keep one of the two");
            }
        }
        for (WheelBrake brake : WheelBrake.values()) {
            for (YamlNode node : root.member("looking-over").items(brake.toString())) {
                node.only("component", "check", "only-brakes");
                CheckCode check = node.code("check", CheckCode.class);
                if (!checks.containsKey(check)) {
                    throw node.wrong("there is no check '" + check + "'", "add it to the checks below");
                }
                lookingOver.add(new Check.LookedOver(
                        brake,
                        node.codes("only-brakes", BrakeLayout.class),
                        node.code("component", Component.class),
                        check));
            }
        }
    }

    private Check check(YamlNode node, Verified standing, String source) {
        node.only(
                "code",
                "text",
                "at",
                "on",
                "only-brakes",
                "only-parking",
                "minutes",
                "access",
                "risk",
                "drives",
                "cautions",
                "needs-symptom",
                "roller-test",
                "shows",
                "sound",
                "answers",
                "source");
        int access = node.whole("access");
        if (access < 0 || access > 4) {
            throw node.wrong("access " + access + " is not a level", "write 0 on its wheels to 4 hydraulics opened");
        }
        String own = node.optionalText("source");
        List<Check.Outcome> outcomes = new ArrayList<>();
        for (YamlNode answer : node.items("answers")) {
            outcomes.add(outcome(answer));
        }
        BrakeSystem rollerTest = node.optionalCode("roller-test", BrakeSystem.class);
        List<SymptomCode> shows = node.codes("shows", SymptomCode.class);
        if (outcomes.isEmpty() && (rollerTest == null || shows.isEmpty())) {
            throw node.wrong(
                    "check '" + node.text("code") + "' has no answers",
                    "write its answers, or the roller test and what it shows");
        }
        return new Check(
                node.code("code", CheckCode.class),
                node.text("text"),
                node.code("at", Level.class),
                node.optionalCode("on", WheelBrake.class),
                node.codes("only-brakes", BrakeLayout.class),
                node.codes("only-parking", ParkingLayout.class),
                node.whole("minutes"),
                access,
                node.code("risk", Risk.class),
                node.optionalCode("drives", Drives.class),
                node.codes("cautions", CautionCode.class),
                node.optionalCode("needs-symptom", SymptomCode.class),
                rollerTest,
                shows,
                node.codes("sound", Component.class),
                List.copyOf(outcomes),
                own == null ? standing : Verified.READ,
                own == null ? source : own);
    }

    private Check.Outcome outcome(YamlNode answer) {
        answer.only("finding", "shows", "component", "condition", "measure");
        MeasuredQuantity measure = answer.optionalCode("measure", MeasuredQuantity.class);
        String code = answer.optionalText("finding");
        if (code == null) {
            return new Check.Outcome(
                    null,
                    answer.code("shows", SymptomCode.class),
                    answer.code("component", Component.class),
                    answer.code("condition", Condition.class),
                    measure);
        }
        FindingEvidence finding = findings.get(code);
        if (finding == null || finding.conditions().isEmpty()) {
            throw answer.wrong("there is no finding '" + code + "' with a state", "mend the code or add it");
        }
        return new Check.Outcome(
                code, null, finding.component(), finding.conditions().get(0), measure);
    }

    private static double probability(YamlNode node) {
        double value = node.decimal().doubleValue();
        if (value < 0 || value > 1) {
            throw node.wrong("probability " + node.text() + " is outside 0 to 1", "write a value such as 0.9");
        }
        return value;
    }

    private static double positive(YamlNode node) {
        double value = node.decimal().doubleValue();
        if (value <= 0) {
            throw node.wrong(node.text() + " is not above 0", "write a value above 0");
        }
        return value;
    }
}
