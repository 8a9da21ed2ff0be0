package org.axlecause.policy;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.axlecause.facts.BrakeBuild;
import org.axlecause.facts.BrakeSystem;
import org.axlecause.facts.MeasuredQuantity;
import org.axlecause.facts.Necessity;
import org.axlecause.facts.Party;
import org.axlecause.facts.ScopeAction;
import org.axlecause.facts.ScopeExtent;
import org.axlecause.facts.ScopeItem;
import org.axlecause.shared.Dimension;
import org.axlecause.shared.Problem;
import org.axlecause.shared.Units;
import org.jspecify.annotations.Nullable;

/** Holds each clause of a layer to the vocabulary: its code, the members that it takes, their codes, units and size. */
final class ClauseCheck {

    /** A value this many times the baseline's must be a slip of the pen; no number of the trade. */
    private static final BigDecimal SLIP = BigDecimal.TEN;

    private static final int MOST_AXLES = 20;

    private final List<Problem.Cause> causes;

    ClauseCheck(List<Problem.Cause> causes) {
        this.causes = causes;
    }

    /** Notes what is wrong with a layer; the layer is at the pointer. */
    void layer(String pointer, List<ClauseWanted> clauses) {
        Set<String> keys = new HashSet<>();
        for (int index = 0; index < clauses.size(); index++) {
            String at = pointer + "/" + index;
            ClauseWanted clause = clauses.get(index);
            if (clause == null) {
                add(at, "null is no clause; expected is an object with clause and what it sets.");
            } else if (!keys.add(clause.key())) {
                add(at, "The clause '" + clause.key() + "' stands twice in this layer; keep one of the two.");
            } else {
                clause(at, clause);
            }
        }
    }

    private void clause(String at, ClauseWanted clause) {
        ClauseWord word = Vocabulary.released().find(clause.clause());
        if (word == null) {
            add(
                    at + "/clause",
                    "'" + clause.clause() + "' is no clause; expected is one of "
                            + String.join(", ", Vocabulary.released().all().keySet()) + ".");
            return;
        }
        Map<String, @Nullable Object> members = members(clause);
        int before = causes.size();
        members.forEach((name, value) -> {
            if (value != null && !word.takes().contains(name)) {
                add(
                        at + "/" + name,
                        "The clause '" + word.code() + "' takes no `" + name + "`; it takes "
                                + String.join(
                                        ", ", word.takes().stream().sorted().toList()) + ". Leave it out.");
            } else if (value == null
                    && word.takes().contains(name)
                    && !word.optional().contains(name)) {
                add(at + "/" + name, "The clause '" + word.code() + "' needs `" + name + "`. Add it.");
            }
        });
        if (causes.size() == before) {
            contents(at, clause, word);
        }
    }

    private void contents(String at, ClauseWanted clause, ClauseWord word) {
        code(
                at + "/necessity",
                clause.necessity(),
                Stream.concat(codes(Necessity.class), Stream.of(MergedPolicy.NO_NECESSITY)));
        code(at + "/extent", clause.extent(), codes(ScopeExtent.class).filter(code -> !code.equals("circuit")));
        code(
                at + "/figure",
                clause.figure(),
                Arrays.stream(LimitedFigure.values()).map(each -> each.kind().toString()));
        code(at + "/brake", clause.brake(), codes(BrakeSystem.class).filter(code -> !code.equals("secondary")));
        code(at + "/build", clause.build(), codes(BrakeBuild.class));
        code(at + "/action", clause.action(), codes(ScopeAction.class));
        code(at + "/item", clause.item(), codes(ScopeItem.class));
        code(at + "/quantity", clause.quantity(), codes(MeasuredQuantity.class));
        code(at + "/by", clause.by(), codes(Party.class));
        Integer axle = clause.axle();
        if (axle != null && (axle < 1 || axle > MOST_AXLES)) {
            add(at + "/axle", axle + " is no number of an axle; expected is 1 to " + MOST_AXLES + ".");
        }
        if (clause.value() != null && clause.unit() != null) {
            value(at, clause, clause.value(), clause.unit(), word);
        }
    }

    private void value(String at, ClauseWanted clause, BigDecimal value, String unit, ClauseWord word) {
        LimitedFigure limited =
                clause.figure() == null ? null : figure(clause.figure()).orElse(null);
        Dimension dimension = limited == null ? word.dimension() : limited.dimension();
        if (value.signum() < 0) {
            add(at + "/value", value.toPlainString() + " is below 0; expected is a number of 0 or more.");
            return;
        }
        if (dimension == null) {
            if (!unit.equals(word.unit())) {
                add(at + "/unit", "'" + unit + "' is no unit for this clause; expected is " + word.unit() + ".");
            }
            return;
        }
        Optional<String> wrong = Units.whatIsWrong(unit, dimension);
        if (wrong.isPresent()) {
            add(at + "/unit", wrong.get() + ".");
            return;
        }
        BigDecimal usual = word.written();
        if (usual != null
                && word.unit() != null
                && Units.toBase(value, unit, dimension)
                                .compareTo(Units.toBase(usual, word.unit(), dimension)
                                        .multiply(SLIP))
                        > 0) {
            add(
                    at + "/value",
                    value.toPlainString() + " " + unit + " is more than ten times the usual " + usual.toPlainString()
                            + " " + word.unit() + " and must be a slip. Correct value or unit.");
        }
    }

    static Optional<LimitedFigure> figure(String code) {
        return Arrays.stream(LimitedFigure.values())
                .filter(figure -> figure.kind().toString().equals(code))
                .findFirst();
    }

    private void code(String pointer, @Nullable String code, Stream<String> known) {
        List<String> codes = known.toList();
        if (code != null && !codes.contains(code)) {
            add(
                    pointer,
                    "'" + code + "' is unknown; expected is one of "
                            + codes.stream().collect(Collectors.joining(", ")) + ".");
        }
    }

    private static <E extends Enum<E>> Stream<String> codes(Class<E> codes) {
        return Arrays.stream(codes.getEnumConstants()).map(Enum::toString);
    }

    private static Map<String, @Nullable Object> members(ClauseWanted clause) {
        Map<String, @Nullable Object> members = new LinkedHashMap<>();
        members.put("value", clause.value());
        members.put("unit", clause.unit());
        members.put("necessity", clause.necessity());
        members.put("extent", clause.extent());
        members.put("figure", clause.figure());
        members.put("brake", clause.brake());
        members.put("axle", clause.axle());
        members.put("build", clause.build());
        members.put("action", clause.action());
        members.put("item", clause.item());
        members.put("quantity", clause.quantity());
        members.put("by", clause.by());
        return members;
    }

    private void add(String pointer, String text) {
        causes.add(new Problem.Cause(pointer, text));
    }
}
