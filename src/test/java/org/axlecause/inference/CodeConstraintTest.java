package org.axlecause.inference;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.axlecause.facts.Candidate;
import org.axlecause.facts.CauseCode;
import org.axlecause.facts.Figure;
import org.axlecause.facts.FigureKind;
import org.axlecause.facts.Finding;
import org.axlecause.facts.PartState;
import org.axlecause.facts.Proof;
import org.axlecause.facts.SettledCause;
import org.drools.core.impl.InternalRuleBase;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CodeConstraintTest {

    @Test
    void a_constraint_on_one_code_is_read_as_its_rule_writes_it() {
        CodeConstraint read = CodeConstraint.of(Figure.class, "kind == FigureKind.DRAG");

        assertThat(read).isNotNull();
        assertThat(read.property().getName()).isEqualTo("kind");
        assertThat(read.codes()).isEqualTo(List.of(FigureKind.DRAG));
    }

    @Test
    void a_constraint_on_several_codes_is_read_over_several_lines() {
        CodeConstraint read = CodeConstraint.of(
                Proof.class, "code in ( CauseCode.CALLIPER_LEAKING,\n    CauseCode.CALLIPER_PISTON_SEIZED )");

        assertThat(read).isNotNull();
        assertThat(read.codes()).isEqualTo(List.of(CauseCode.CALLIPER_LEAKING, CauseCode.CALLIPER_PISTON_SEIZED));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "kind != FigureKind.DRAG",
                "kind not in (FigureKind.DRAG, FigureKind.PEAK)",
                "kind == FigureKind.DRAG || observable",
                "kind == $limit.kind",
                "kind == FigureKind.NO_SUCH_KIND",
                "kind == CauseCode.CALLIPER_LEAKING",
                "figure.kind == FigureKind.DRAG",
                "observable == true",
                "observable",
                "value != null"
            })
    void what_asks_anything_else_is_left_to_the_engine(String written) {
        assertThat(CodeConstraint.of(Figure.class, written)).isNull();
    }

    /** The engine says nothing when it words its constraints in another way; it would only be slower. */
    @Test
    void the_engine_looks_the_codes_of_the_facts_up_that_most_rules_ask_for() {
        InternalRuleBase engine = (InternalRuleBase) RuleBench.engine();

        assertThat(engine.getRete().getObjectTypeNodes().stream()
                        .filter(type -> type.getObjectSinkPropagator() instanceof SinkByCode)
                        .map(type -> type.getObjectType().getClassName()))
                .contains(
                        Figure.class.getName(),
                        Finding.class.getName(),
                        Candidate.class.getName(),
                        Proof.class.getName(),
                        SettledCause.class.getName(),
                        PartState.class.getName());
    }
}
