package org.axlecause.diagnosis;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.axlecause.facts.Candidate;
import org.axlecause.facts.CauseCode;
import org.axlecause.facts.CheckCode;
import org.axlecause.facts.Component;
import org.axlecause.facts.MeasuredQuantity;
import org.axlecause.facts.SymptomCode;
import org.axlecause.facts.Vehicle;
import org.axlecause.shared.Recent;
import org.axlecause.shared.YamlFile;

/** Causes, what they show and leave, what leads to what, and the checks that tell them apart; read from the files. */
public final class CauseModel {

    private static final String FOLDER = "cause-model";
    private static final int MOST_LAYOUTS = 500;

    private final Settings settings;
    private final Map<CauseCode, Cause> causes;
    private final Map<SymptomCode, SymptomEvidence> symptoms;
    private final Map<String, FindingEvidence> findings;
    private final Map<Component, List<FindingEvidence>> findingsByComponent;
    private final Map<String, Circumstance> circumstances;
    private final Map<String, State> states;
    private final List<Edge> edges;
    private final Map<String, List<Edge>> edgesFrom;
    private final Map<String, Set<CauseCode>> settledBy = new HashMap<>();
    private final Map<CheckCode, Check> checks;
    private final List<Check.LookedOver> lookingOver;
    private final Map<MeasuredQuantity, String> units;
    private final Recent<Possibilities.Kind, Possibilities> possibilities = new Recent<>(MOST_LAYOUTS);

    private CauseModel(CauseModelReader reader) {
        this.settings = reader.settings;
        this.causes = Collections.unmodifiableMap(reader.causes.causes);
        this.symptoms = Collections.unmodifiableMap(reader.evidence.symptoms);
        this.findings = Collections.unmodifiableMap(reader.evidence.findings);
        this.circumstances = Collections.unmodifiableMap(reader.evidence.circumstances);
        this.states = Collections.unmodifiableMap(reader.chain.states);
        this.edges = List.copyOf(reader.chain.edges);
        this.checks = Collections.unmodifiableMap(reader.checks.checks);
        this.lookingOver = List.copyOf(reader.checks.lookingOver);
        this.units = Collections.unmodifiableMap(reader.checks.units);
        Map<Component, List<FindingEvidence>> byComponent = new EnumMap<>(Component.class);
        findings.values()
                .forEach(finding -> byComponent
                        .computeIfAbsent(finding.component(), component -> new ArrayList<>())
                        .add(finding));
        this.findingsByComponent = byComponent;
        Map<String, List<Edge>> from = new LinkedHashMap<>();
        edges.forEach(edge ->
                from.computeIfAbsent(edge.from(), code -> new ArrayList<>()).add(edge));
        this.edgesFrom = new HashMap<>(from);
        for (Cause cause : causes.values()) {
            Stream.concat(cause.provedBy().stream(), cause.refutedBy().stream())
                    .flatMap(List::stream)
                    .forEach(code -> settledBy
                            .computeIfAbsent(code, empty -> EnumSet.noneOf(CauseCode.class))
                            .add(cause.code()));
        }
    }

    /** The cause model of the release; throws with file, line and remedy where a file is wrong. */
    public static CauseModel load() {
        return of(YamlFile.inRules(FOLDER));
    }

    /** A cause model from other files. */
    static CauseModel of(List<YamlFile> files) {
        return new CauseModel(new CauseModelReader(files));
    }

    /**
     * Every cause at every place where the vehicle's layout allows it, sorted by code and place; none for a category
     * whose causes are not known here.
     */
    public List<Candidate> candidates(Vehicle vehicle) {
        return knows(vehicle) ? possibilities(vehicle).candidates() : List.of();
    }

    /**
     * How likely each cause is on each axle before anything is seen, by axle and cause; none for a category whose causes
     * are not known here.
     *
     * @param day day of the presentation
     */
    public List<AxleShare> axleShares(Vehicle vehicle, LocalDate day) {
        return knows(vehicle) ? AxleShare.of(this, vehicle, day) : List.of();
    }

    /** Whether the causes of the vehicle's category are known here. */
    boolean knows(Vehicle vehicle) {
        return settings.categories().contains(vehicle.category());
    }

    /** What could be wrong on vehicles of this layout; kept, since vehicles are many and layouts few. */
    Possibilities possibilities(Vehicle vehicle) {
        Possibilities.Kind kind = Possibilities.Kind.of(vehicle);
        Possibilities known = possibilities.find(kind);
        return known == null ? possibilities.keep(kind, new Possibilities(this, kind)) : known;
    }

    /** All causes, in the order of their codes. */
    public List<Cause> causes() {
        return List.copyOf(causes.values());
    }

    /** All symptoms. */
    public List<SymptomEvidence> symptoms() {
        return List.copyOf(symptoms.values());
    }

    /** All findings that are evidence. */
    public List<FindingEvidence> findings() {
        return List.copyOf(findings.values());
    }

    /** What proves or refutes beside findings. */
    public List<Circumstance> circumstances() {
        return List.copyOf(circumstances.values());
    }

    /** All states between causes and symptoms. */
    public List<State> states() {
        return List.copyOf(states.values());
    }

    /** What leads to what. */
    public List<Edge> edges() {
        return edges;
    }

    /** All checks. */
    public List<Check> checks() {
        return List.copyOf(checks.values());
    }

    /** What is looked at on both wheels of an opened axle. */
    public List<Check.LookedOver> lookingOver() {
        return lookingOver;
    }

    /** UCUM unit in which a quantity is asked for. */
    public String unitOf(MeasuredQuantity quantity) {
        String unit = units.get(quantity);
        if (unit == null) {
            throw new IllegalStateException("The quantity " + quantity + " has no unit in checks.yaml; add it there.");
        }
        return unit;
    }

    Settings settings() {
        return settings;
    }

    Cause cause(CauseCode code) {
        Cause cause = causes.get(code);
        if (cause == null) {
            throw new IllegalStateException("The cause " + code + " is not in the cause model.");
        }
        return cause;
    }

    SymptomEvidence symptom(SymptomCode code) {
        SymptomEvidence symptom = symptoms.get(code);
        if (symptom == null) {
            throw new IllegalStateException("The symptom " + code + " is not in the cause model.");
        }
        return symptom;
    }

    SymptomEvidence symptomOf(String code) {
        SymptomCode symptom = Chains.symptom(code);
        if (symptom == null) {
            throw new IllegalStateException("The symptom " + code + " is not in the cause model.");
        }
        return symptom(symptom);
    }

    FindingEvidence finding(String code) {
        FindingEvidence finding = findings.get(code);
        if (finding == null) {
            throw new IllegalStateException("The finding " + code + " is not in the cause model.");
        }
        return finding;
    }

    Check check(CheckCode code) {
        Check check = checks.get(code);
        if (check == null) {
            throw new IllegalStateException("The check " + code + " is not in the cause model.");
        }
        return check;
    }

    /** How far a check needs the vehicle taken apart; nothing for a check that is not for finding causes. */
    int accessOf(CheckCode code) {
        Check check = checks.get(code);
        return check == null ? 0 : check.access();
    }

    /** Whether the check looks at the part, so that a part it could not get at stays unseen. */
    boolean looksAt(CheckCode code, Component component) {
        Check check = checks.get(code);
        return check == null
                || check.sound().contains(component)
                || check.outcomes().stream().anyMatch(outcome -> looksAt(outcome, component));
    }

    private boolean looksAt(Check.Outcome outcome, Component component) {
        return outcome.finding() == null
                ? outcome.component() == component
                : finding(outcome.finding()).component() == component;
    }

    List<FindingEvidence> findingsOn(Component component) {
        return findingsByComponent.getOrDefault(component, List.of());
    }

    /** Causes that a finding helps to prove or to rule out. */
    Set<CauseCode> causesSettledBy(String finding) {
        return settledBy.getOrDefault(finding, Set.of());
    }

    List<Edge> edgesFrom(String code) {
        return edgesFrom.getOrDefault(code, List.of());
    }

    State state(String code) {
        State state = states.get(code);
        if (state == null) {
            throw new IllegalStateException("The state " + code + " is not in the cause model.");
        }
        return state;
    }

    /** Chance that a sign shows although no cause of the model is there. */
    double leak(Sign sign) {
        SymptomCode symptom = sign.finding() ? null : Chains.symptom(sign.code());
        return symptom == null ? settings.findingLeak() : symptom(symptom).leak();
    }
}
