package org.axlecause.diagnosis;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.axlecause.facts.BrakeLayout;
import org.axlecause.facts.CauseCode;
import org.axlecause.facts.ParkingLayout;
import org.axlecause.facts.ScopeAction;
import org.axlecause.facts.ScopeExtent;
import org.axlecause.facts.ScopeItem;
import org.axlecause.facts.Spot;
import org.axlecause.facts.Verified;
import org.axlecause.shared.YamlNode;
import org.jspecify.annotations.Nullable;

/** Reads the causes of the cause model. */
final class CausesReader {

    final Map<CauseCode, Cause> causes = new EnumMap<>(CauseCode.class);
    private final Settings settings;
    private final EvidenceReader evidence;

    CausesReader(Settings settings, EvidenceReader evidence) {
        this.settings = settings;
        this.evidence = evidence;
    }

    void read(YamlNode root) {
        root.only("verified", "source", "causes");
        Verified standing = root.code("verified", Verified.class);
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
                "alike",
                "shows",
                "shows-on-other-wheel",
                "shows-on-circuit",
                "shows-in-first-run",
                "shows-on-shared-friction",
                "leaves",
                "proved-by",
                "refuted-by",
                "excludes",
                "likelier-after",
                "asks-what-is-upstream",
                "never-first",
                "needs-work",
                "makes-scope",
                "facts-verified",
                "facts-source");
        Level level = node.code("at", Level.class);
        List<Link> links = new ArrayList<>();
        readLinks(node.optional("shows"), Reach.SAME_WHEEL, Kind.SYMPTOM, links);
        readLinks(node.optional("shows-on-other-wheel"), Reach.OTHER_WHEEL, Kind.SYMPTOM, links);
        readLinks(node.optional("shows-on-circuit"), Reach.CIRCUIT_WHEELS, Kind.SYMPTOM, links);
        readLinks(node.optional("shows-in-first-run"), Reach.SAME_WHEEL, Kind.SYMPTOM_OF_FIRST_RUN, links);
        readLinks(node.optional("shows-on-shared-friction"), Reach.SAME_WHEEL, Kind.SYMPTOM_ON_SHARED_FRICTION, links);
        readLinks(node.optional("leaves"), Reach.SAME_WHEEL, Kind.FINDING, links);
        if (node.items("proved-by").isEmpty()) {
            throw node.wrong(
                    "nothing proves '" + node.text("code") + "'",
                    "write under proved-by which findings or circumstances prove it");
        }
        YamlNode bothSides = node.optional("both-sides");
        if (bothSides != null && level != Level.WHEEL) {
            throw bothSides.wrong("only a cause at a wheel can be on both sides", "remove it or write at: wheel");
        }
        YamlNode firstRun = node.optional("shows-in-first-run");
        if (firstRun != null && level != Level.AXLE) {
            throw firstRun.wrong("runs are repeated axle by axle", "write under shows or write at: axle");
        }
        boolean alike = Boolean.TRUE.equals(node.optionalFlag("alike"));
        if (alike && level != Level.AXLE) {
            throw node.member("alike")
                    .wrong("only a cause of an axle can work on both its wheels alike", "remove it or write at: axle");
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
                bothSides == null ? null : ModelNumbers.probability(bothSides),
                alike,
                List.copyOf(links),
                grounds(node, "proved-by"),
                grounds(node, "refuted-by"),
                node.codes("excludes", CauseCode.class),
                node.codes("likelier-after", ScopeItem.class),
                Boolean.TRUE.equals(node.optionalFlag("asks-what-is-upstream")),
                Boolean.TRUE.equals(node.optionalFlag("never-first")),
                Boolean.TRUE.equals(node.optionalFlag("needs-work")),
                signature(node),
                standing,
                node.code("facts-verified", Verified.class),
                node.text("facts-source"));
    }

    private enum Kind {
        SYMPTOM,
        SYMPTOM_OF_FIRST_RUN,
        SYMPTOM_ON_SHARED_FRICTION,
        FINDING
    }

    private void readLinks(@Nullable YamlNode written, Reach reach, Kind kind, List<Link> links) {
        if (written == null) {
            return;
        }
        boolean finding = kind == Kind.FINDING;
        for (String code : written.names()) {
            YamlNode strength = written.member(code);
            if (finding ? !evidence.findings.containsKey(code) : evidence.symptomOf(code) == null) {
                throw strength.wrong(
                        "there is no " + (finding ? "finding '" : "symptom '") + code + "'",
                        "mend the code or add it to " + (finding ? "evidence.findings.yaml" : "symptoms.yaml"));
            }
            FindingEvidence left = evidence.findings.get(code);
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
            links.add(new Link(
                    code,
                    finding,
                    reach,
                    strength.text(),
                    value,
                    kind == Kind.SYMPTOM_OF_FIRST_RUN,
                    kind == Kind.SYMPTOM_ON_SHARED_FRICTION));
        }
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
                if (!evidence.findings.containsKey(code.text()) && !evidence.circumstances.containsKey(code.text())) {
                    throw code.wrong(
                            "there is no finding or circumstance '" + code.text() + "'",
                            "mend the code or add it to evidence.findings.yaml");
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

    void checkAllCausesAreThere() {
        for (CauseCode code : CauseCode.values()) {
            if (!causes.containsKey(code)) {
                throw new IllegalStateException(
                        "The cause " + code + " is in no file of the cause model; add it to the file of its subject.");
            }
        }
    }
}
