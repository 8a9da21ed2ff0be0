package org.axlecause.diagnosis;

import static java.util.stream.Collectors.toMap;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;
import static org.axlecause.diagnosis.Cases.DAY;
import static org.axlecause.diagnosis.Cases.MODEL;
import static org.axlecause.diagnosis.Cases.on;
import static org.axlecause.diagnosis.Cases.shows;
import static org.axlecause.diagnosis.Cases.van;
import static org.axlecause.diagnosis.PriorGroup.DRUM_OLD;
import static org.axlecause.diagnosis.PriorGroup.DRUM_YOUNG;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import org.axlecause.facts.CauseCode;
import org.axlecause.facts.SymptomCode;
import org.junit.jupiter.api.Test;

/** Weights that stand in place of the book's, and that they are never taken for another's. */
class CauseWeightsTest {

    private static final CauseWeights MANY_OVAL_DRUMS = oval(2, 60.0);
    private static final CauseWeights FEW_OVAL_DRUMS = oval(2, 0.5);

    @Test
    void a_cause_that_was_learned_to_be_frequent_is_likelier_and_a_rare_one_less_likely() {
        Diagnose diagnose = new Diagnose(MODEL);

        double book = oval(diagnose, CauseWeights.BOOK);

        assertThat(oval(diagnose, MANY_OVAL_DRUMS)).isGreaterThan(book + 0.1);
        assertThat(oval(diagnose, FEW_OVAL_DRUMS)).isPositive().isLessThan(book / 2);
    }

    @Test
    void what_was_weighed_by_one_chains_weights_is_never_told_to_another() {
        Diagnose remembering = new Diagnose(MODEL);
        List<CauseWeights> chains = List.of(CauseWeights.BOOK, MANY_OVAL_DRUMS, FEW_OVAL_DRUMS);

        for (int round = 0; round < 3; round++) {
            for (CauseWeights weights : chains) {
                assertThat(remembering.of(swinging(weights)))
                        .as("round %d by %s", round, weights)
                        .isEqualTo(new Diagnose(MODEL).of(swinging(weights)));
            }
        }
    }

    @Test
    void the_same_weights_are_weighed_once_and_a_version_that_learned_nothing_weighs_as_the_book() {
        Possibilities possibilities = MODEL.possibilities(van());
        Priors.Age age = new Priors.Age(true, true);

        assertThat(possibilities.priors(oval(2, 60.0), age)).isSameAs(possibilities.priors(MANY_OVAL_DRUMS, age));
        assertThat(possibilities.priors(oval(3, 60.5), age)).isNotSameAs(possibilities.priors(MANY_OVAL_DRUMS, age));
        assertThat(possibilities.priors(new CauseWeights(7, Map.of()), age))
                .isSameAs(possibilities.priors(CauseWeights.BOOK, age));
    }

    @Test
    void only_the_group_that_was_learned_of_is_weighed_otherwise() {
        Cause cause = MODEL.cause(CauseCode.DRUM_OVAL);

        assertThat(MANY_OVAL_DRUMS.of(cause, DRUM_OLD)).isEqualTo(60.0);
        assertThat(MANY_OVAL_DRUMS.of(cause, DRUM_YOUNG))
                .isEqualTo(cause.weights().drumYoung());
        assertThat(new CauseWeights(1, Map.of(CauseCode.DRUM_OVAL, Map.of(PriorGroup.DISC_OLD, 9.0)))
                        .of(cause, PriorGroup.DISC_OLD))
                .as("discs have no drum")
                .isNull();
    }

    @Test
    void a_weight_is_a_number_above_none() {
        for (double wrong : new double[] {0, -1, Double.NaN, Double.POSITIVE_INFINITY}) {
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> oval(1, wrong))
                    .withMessageContaining("drum-oval")
                    .withMessageContaining(String.valueOf(wrong));
        }
    }

    /** What is expected on all axles of a vehicle is the model's number of expected faults, pairs counted once. */
    @Test
    void the_shares_of_the_axles_add_up_to_the_faults_expected_and_are_those_of_the_odds() {
        List<AxleShare> shares = MODEL.axleShares(van(), DAY);

        double onWheelsAndAxles = shares.stream()
                .filter(share -> MODEL.cause(share.cause()).level() == Level.WHEEL
                        || MODEL.cause(share.cause()).level() == Level.AXLE)
                .mapToDouble(AxleShare::share)
                .sum();
        double elsewhere = shares.stream()
                .filter(share -> MODEL.cause(share.cause()).level() == Level.CIRCUIT
                        || MODEL.cause(share.cause()).level() == Level.VEHICLE)
                .collect(toMap(AxleShare::cause, AxleShare::share, (one, other) -> one))
                .values()
                .stream()
                .mapToDouble(Double::doubleValue)
                .sum();
        assertThat(onWheelsAndAxles + elsewhere).isCloseTo(MODEL.settings().expectedFaults(), within(1e-9));
        assertThat(shares)
                .isSortedAccordingTo(Comparator.comparingInt(AxleShare::axle).thenComparing(AxleShare::cause))
                .allSatisfy(share -> {
                    assertThat(share.share()).isPositive().isLessThanOrEqualTo(0.3);
                    assertThat(MODEL.cause(share.cause()).weights().of(share.group()))
                            .isEqualTo(share.weight());
                });
    }

    private static CauseWeights oval(int version, double weight) {
        return new CauseWeights(version, Map.of(CauseCode.DRUM_OVAL, Map.of(DRUM_OLD, weight)));
    }

    private static double oval(Diagnose diagnose, CauseWeights weights) {
        return diagnose.of(swinging(weights)).causes().stream()
                .filter(cause ->
                        cause.code() == CauseCode.DRUM_OVAL && cause.place().sharesAxleWith(Cases.REAR))
                .mapToDouble(cause -> cause.probability().doubleValue())
                .max()
                .orElse(0);
    }

    /** A van whose force swings at the right rear wheel. */
    private static DiagnosisInput swinging(CauseWeights weights) {
        DiagnosisInput plain = on(van(), shows(SymptomCode.FORCE_SWING_ONE_WHEEL, Cases.REAR_RIGHT));
        return new DiagnosisInput(
                plain.vehicle(),
                plain.day(),
                weights,
                plain.symptoms(),
                plain.observable(),
                plain.findings(),
                plain.proofs(),
                plain.refutations(),
                plain.explainedAway(),
                plain.likelier(),
                plain.openedAxles(),
                plain.danger(),
                plain.openingBarred());
    }
}
