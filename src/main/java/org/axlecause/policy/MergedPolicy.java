package org.axlecause.policy;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.TreeSet;
import org.axlecause.facts.BrakeBuild;
import org.axlecause.facts.BrakeSystem;
import org.axlecause.facts.ClauseCode;
import org.axlecause.facts.FigureKind;
import org.axlecause.facts.MeasuredQuantity;
import org.axlecause.facts.Necessity;
import org.axlecause.facts.NeededEvidence;
import org.axlecause.facts.Party;
import org.axlecause.facts.Policy;
import org.axlecause.facts.PolicyClause;
import org.axlecause.facts.ScopeAction;
import org.axlecause.facts.ScopeExtent;
import org.axlecause.facts.ScopeItem;
import org.axlecause.facts.Threshold;
import org.axlecause.facts.ThresholdCode;
import org.axlecause.facts.Verified;
import org.axlecause.facts.WorkshopLimit;
import org.axlecause.shared.Units;
import org.jspecify.annotations.Nullable;

/** One version of a policy as it holds at one site: the layers of the document over each other and over the baseline. */
final class MergedPolicy {

    static final String NO_NECESSITY = "none";

    private final Map<String, EffectiveClause> clauses = new TreeMap<>();

    private MergedPolicy() {}

    /** The layers merged for a site of a region; either may be null. */
    static MergedPolicy of(PolicyDocument document, @Nullable String region, @Nullable String site) {
        MergedPolicy merged = new MergedPolicy();
        merged.set(Layer.CHAIN, document.ofChain());
        if (region != null) {
            merged.set(Layer.REGION, document.ofRegions().getOrDefault(region, List.of()));
        }
        if (site != null) {
            merged.set(Layer.SITE, document.ofSites().getOrDefault(site, List.of()));
        }
        return merged;
    }

    /** What a layer sets; what a layer above has locked stays. */
    private void set(Layer layer, List<ClauseWanted> wanted) {
        for (ClauseWanted clause : wanted) {
            EffectiveClause above = clauses.get(clause.key());
            Layer locked = above == null ? null : above.lockedBy();
            if (locked == null) {
                clauses.put(clause.key(), new EffectiveClause(clause, layer, clause.isLocked() ? layer : null));
            }
        }
    }

    /** The layer that has locked a clause, or null. */
    @Nullable
    Layer lockOf(ClauseWanted clause) {
        EffectiveClause found = clauses.get(clause.key());
        return found == null ? null : found.lockedBy();
    }

    /** What the layers set, by key. */
    Map<String, EffectiveClause> set() {
        return new TreeMap<>(clauses);
    }

    /** Every clause as it holds, by key: what the layers set, else what the baseline sets. */
    Map<String, EffectiveClause> all() {
        Map<String, EffectiveClause> all = new TreeMap<>();
        Vocabulary.released().all().forEach((code, word) -> {
            if (!word.isRepeated()) {
                all.put(code, new EffectiveClause(word.baseline(), Layer.BASELINE, null));
            }
        });
        all.putAll(clauses);
        return all;
    }

    /** The policy that cases are judged by. */
    Policy toPolicy(String name, int version, Policy baseline) {
        Map<ThresholdCode, Threshold> thresholds = new EnumMap<>(ThresholdCode.class);
        baseline.thresholds().forEach(threshold -> thresholds.put(threshold.code(), threshold));
        Map<ClauseCode, PolicyClause> single = new EnumMap<>(ClauseCode.class);
        baseline.clauses().forEach(clause -> single.put(clause.code(), clause));
        List<WorkshopLimit> limits = new ArrayList<>();
        List<NeededEvidence> needed = new ArrayList<>();
        Map<String, Party> consents = new TreeMap<>();
        Map<String, BigDecimal> hours = new TreeMap<>();
        TreeSet<ClauseCode> locked = new TreeSet<>();
        clauses.forEach((key, effective) -> {
            ClauseWanted set = effective.set();
            ClauseWord word = Objects.requireNonNull(Vocabulary.released().find(set.clause()), key);
            String source = "policy '" + name + "' version " + version + ", " + effective.from();
            if (word.clause() != null && effective.lockedBy() != null) {
                locked.add(word.clause());
            }
            if (word.threshold() != null) {
                thresholds.put(
                        word.threshold(),
                        new Threshold(
                                word.threshold(),
                                Objects.requireNonNull(valueOf(set, word)),
                                Verified.JUDGEMENT,
                                source));
                return;
            }
            switch (Objects.requireNonNull(word.clause())) {
                case WORKSHOP_LIMIT -> limits.add(limit(set, source));
                case NEEDED_MEASUREMENT, NEEDED_PHOTO -> needed.add(evidence(set));
                case CONSENT -> consents.put(line(set), code(set.by(), Party.class));
                case LABOUR_CAP -> hours.put(line(set), Objects.requireNonNull(set.value()));
                default -> single.put(word.clause(), clause(set, word, source, effective.lockedBy() != null));
            }
        });
        return new Policy(
                name,
                version,
                List.copyOf(single.values()),
                List.copyOf(thresholds.values()),
                limits,
                needed,
                consents,
                hours,
                List.copyOf(locked));
    }

    private static PolicyClause clause(ClauseWanted set, ClauseWord word, String source, boolean locked) {
        String necessity = set.necessity();
        return new PolicyClause(
                Objects.requireNonNull(word.clause()),
                valueOf(set, word),
                necessity == null || necessity.equals(NO_NECESSITY) ? null : code(necessity, Necessity.class),
                set.extent() == null ? null : code(set.extent(), ScopeExtent.class),
                source,
                Verified.JUDGEMENT,
                locked);
    }

    private static WorkshopLimit limit(ClauseWanted set, String source) {
        FigureKind figure = code(set.figure(), FigureKind.class);
        return new WorkshopLimit(
                figure,
                code(set.brake(), BrakeSystem.class),
                set.axle(),
                set.build() == null ? null : code(set.build(), BrakeBuild.class),
                LimitedFigure.of(figure)
                        .toBase(Objects.requireNonNull(set.value()), Objects.requireNonNull(set.unit())),
                source);
    }

    private static NeededEvidence evidence(ClauseWanted set) {
        return new NeededEvidence(
                code(set.action(), ScopeAction.class),
                code(set.item(), ScopeItem.class),
                set.quantity() == null ? null : code(set.quantity(), MeasuredQuantity.class));
    }

    private static String line(ClauseWanted set) {
        return set.action() + " " + set.item();
    }

    /** The value in the unit that judging takes; null where the clause sets none. */
    static @Nullable BigDecimal valueOf(ClauseWanted set, ClauseWord word) {
        BigDecimal value = set.value();
        return value == null || word.dimension() == null
                ? value
                : Units.toBase(value, Objects.requireNonNull(set.unit()), word.dimension());
    }

    private static <E extends Enum<E>> E code(@Nullable String code, Class<E> codes) {
        for (E constant : codes.getEnumConstants()) {
            if (constant.toString().equals(code)) {
                return constant;
            }
        }
        throw new IllegalStateException("A kept policy has the code " + code);
    }
}
