package org.axlecause.regimes;

import static org.assertj.core.api.Assertions.assertThat;
import static org.axlecause.inference.RuleBench.shownBy;

import java.math.BigDecimal;
import org.axlecause.facts.Axle;
import org.axlecause.facts.Bound;
import org.axlecause.facts.BrakeBuild;
import org.axlecause.facts.BrakeLayout;
import org.axlecause.facts.BrakeSystem;
import org.axlecause.facts.Deficiency;
import org.axlecause.facts.DeficiencyClass;
import org.axlecause.facts.DeficiencyCode;
import org.axlecause.facts.Exemption;
import org.axlecause.facts.Figure;
import org.axlecause.facts.FigureKind;
import org.axlecause.facts.Limit;
import org.axlecause.facts.LimitStanding;
import org.axlecause.facts.ParkingLayout;
import org.axlecause.facts.Place;
import org.axlecause.facts.Side;
import org.axlecause.facts.Stage;
import org.axlecause.facts.Verified;
import org.axlecause.facts.WorkshopLimit;
import org.axlecause.inference.RuleBench;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** Limits of a policy beside the law, in both directions. */
class WorkshopLimitRulesTest {

    private static final RuleBench RULES = RuleBench.forFolder("deficiencies");
    private static final Place REAR = Place.ofAxle(2);
    private static final Axle DISCS = new Axle(1, true, BrakeLayout.DISC_FLOATING, ParkingLayout.NONE);
    private static final Axle DRUMS = new Axle(2, false, BrakeLayout.DRUM_SIMPLEX, ParkingLayout.NONE);

    @Test
    void a_figure_beyond_the_limit_of_the_policy_warns_without_a_class() {
        WorkshopLimit limit = limit(FigureKind.IMBALANCE, null, null, "0.20");

        assertThat(RULES.given(limit, DISCS, DRUMS, at(REAR, FigureKind.IMBALANCE, "0.2001"))
                        .concluded(Deficiency.class))
                .singleElement()
                .satisfies(shownBy("DEF-120"))
                .returns(DeficiencyCode.SERVICE_IMBALANCE, Deficiency::code)
                .returns(null, Deficiency::severity)
                .satisfies(deficiency ->
                        assertThat(deficiency.limit()).isNotNull().returns(LimitStanding.POLICY, Limit::standing));
        assertThat(RULES.given(limit, DISCS, DRUMS, at(REAR, FigureKind.IMBALANCE, "0.20"))
                        .concluded(Deficiency.class))
                .isEmpty();
        assertThat(RULES.given(limit, DISCS, at(REAR, FigureKind.IMBALANCE, "0.2001"))
                        .concluded(Deficiency.class))
                .isEmpty();
    }

    @Test
    void a_limit_for_one_axle_or_one_kind_of_brake_holds_there_alone() {
        Figure figure = at(REAR, FigureKind.IMBALANCE, "0.25");

        assertThat(found(limit(FigureKind.IMBALANCE, 2, null, "0.20"), figure)).isOne();
        assertThat(found(limit(FigureKind.IMBALANCE, 1, null, "0.20"), figure)).isZero();
        assertThat(found(limit(FigureKind.IMBALANCE, null, BrakeBuild.DRUM, "0.20"), figure))
                .isOne();
        assertThat(found(limit(FigureKind.IMBALANCE, null, BrakeBuild.DISC, "0.20"), figure))
                .isZero();
        assertThat(found(
                        limit(FigureKind.DRAG, null, null, "100"),
                        at(Place.ofWheel(2, Side.LEFT), FigureKind.DRAG, "101")))
                .isOne();
    }

    @Test
    void where_the_law_is_broken_the_law_alone_speaks() {
        Figure figure = at(REAR, FigureKind.IMBALANCE, "0.31");
        Limit law = new Limit(
                DeficiencyCode.SERVICE_IMBALANCE,
                FigureKind.IMBALANCE,
                BrakeSystem.SERVICE,
                REAR,
                Bound.MAXIMUM,
                new BigDecimal("0.30"),
                DeficiencyClass.MAJOR,
                "1.2.1 b(i)",
                LimitStanding.REGIME,
                Verified.READ,
                "test regime");

        assertThat(RULES.given(limit(FigureKind.IMBALANCE, null, null, "0.20"), DRUMS, figure, law)
                        .concluded(Deficiency.class))
                .singleElement()
                .satisfies(shownBy("DEF-010"));
    }

    @Test
    void an_exempt_figure_is_not_held_against_the_vehicle() {
        Figure figure = at(REAR, FigureKind.IMBALANCE, "0.25");
        Exemption exempt = new Exemption(
                FigureKind.IMBALANCE,
                figure.test(),
                Stage.ARRIVAL,
                BrakeSystem.SERVICE,
                REAR,
                "the lower wheel locked");

        assertThat(RULES.given(limit(FigureKind.IMBALANCE, null, null, "0.20"), DRUMS, figure, exempt)
                        .concluded(Deficiency.class))
                .isEmpty();
    }

    @Test
    void the_efficiency_of_the_vehicle_may_have_a_limit_of_its_own() {
        WorkshopLimit limit = limit(FigureKind.EFFICIENCY, null, null, "0.60");

        assertThat(RULES.given(limit, at(Place.VEHICLE, FigureKind.EFFICIENCY, "0.5999"))
                        .concluded(Deficiency.class))
                .singleElement()
                .satisfies(shownBy("DEF-121"))
                .returns(DeficiencyCode.SERVICE_EFFICIENCY, Deficiency::code);
        assertThat(RULES.given(limit, at(Place.VEHICLE, FigureKind.EFFICIENCY, "0.60"))
                        .concluded(Deficiency.class))
                .isEmpty();
        assertThat(RULES.given(limit, DRUMS, at(REAR, FigureKind.EFFICIENCY, "0.30"))
                        .concluded(Deficiency.class))
                .isEmpty();
    }

    private static int found(WorkshopLimit limit, Figure figure) {
        return RULES.given(limit, DISCS, DRUMS, figure)
                .concluded(Deficiency.class)
                .size();
    }

    private static WorkshopLimit limit(
            FigureKind kind, @Nullable Integer axle, @Nullable BrakeBuild build, String value) {
        return new WorkshopLimit(kind, BrakeSystem.SERVICE, axle, build, new BigDecimal(value), "the policy");
    }

    private static Figure at(Place place, FigureKind kind, String value) {
        return BrakeTests.at(place, kind, BrakeSystem.SERVICE, value);
    }
}
