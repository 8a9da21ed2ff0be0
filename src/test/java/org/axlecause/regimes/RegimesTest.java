package org.axlecause.regimes;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.axlecause.regimes.Vehicles.TODAY;
import static org.axlecause.regimes.Vehicles.aSmallVan;
import static org.axlecause.regimes.Vehicles.anyVehicle;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.axlecause.facts.CircuitSplit;
import org.axlecause.facts.DeficiencyClass;
import org.axlecause.facts.DeficiencyCode;
import org.axlecause.facts.EntryId;
import org.axlecause.facts.Figure;
import org.axlecause.facts.InspectedItem;
import org.axlecause.facts.Limit;
import org.axlecause.facts.LimitStanding;
import org.axlecause.facts.MassTerm;
import org.axlecause.facts.Place;
import org.axlecause.facts.QuestionCode;
import org.axlecause.facts.RegimeGap;
import org.axlecause.facts.RegimeTerms;
import org.axlecause.facts.Stage;
import org.axlecause.facts.TrailerKind;
import org.axlecause.facts.Vehicle;
import org.axlecause.facts.Verified;
import org.axlecause.shared.YamlException;
import org.axlecause.shared.YamlFile;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class RegimesTest {

    private static final Regimes REGIMES = Regimes.released();
    private static final BigDecimal STEP = new BigDecimal("0.0001");

    static Stream<Regime> regimes() {
        return REGIMES.all().stream();
    }

    @Test
    void the_release_holds_the_regimes_of_the_contract_and_those_with_figures_that_were_read() {
        assertThat(REGIMES.codes())
                .containsExactly(
                        "au-heavy",
                        "cn-inspection",
                        "cz-periodic",
                        "eaeu-inspection",
                        "eu-periodic",
                        "gb-annual",
                        "jp-inspection",
                        "kr-inspection",
                        "pl-periodic",
                        "us-commercial",
                        "us-in-use");
        assertThat(REGIMES.find("nowhere")).isNull();
    }

    @ParameterizedTest
    @MethodSource("regimes")
    void every_limit_is_sourced_and_a_step_of_it_changes_the_verdict_of_a_figure_at_it(Regime regime) {
        for (Vehicle vehicle : fleet()) {
            for (Limit limit : regime.termsFor(vehicle, TODAY).limits()) {
                Figure atLimit = at(limit, limit.value());
                Figure before = at(
                        limit,
                        limit.bound().isLower()
                                ? limit.value().add(STEP)
                                : limit.value().subtract(STEP));
                Figure behind = at(
                        limit,
                        limit.bound().isLower()
                                ? limit.value().subtract(STEP)
                                : limit.value().add(STEP));

                assertThat(limit.source()).isNotBlank();
                assertThat(limit.isBrokenBy(before)).as("%s", limit).isFalse();
                assertThat(limit.isBrokenBy(behind)).as("%s", limit).isTrue();
                assertThat(limit.isBrokenBy(atLimit))
                        .as("%s", limit)
                        .isEqualTo(limit.deficiency() == DeficiencyCode.NO_EFFORT_AT_WHEEL
                                || limit.deficiency() == DeficiencyCode.PARKING_ONE_SIDED);
            }
        }
    }

    @Test
    void beside_the_bound_of_a_worse_class_stands_the_limit_that_is_required() {
        RegimeTerms terms = REGIMES.find("gb-annual").termsFor(aSmallVan(), TODAY);
        Limit dangerous = parking(terms, DeficiencyClass.DANGEROUS);
        Limit major = parking(terms, DeficiencyClass.MAJOR);

        assertThat(dangerous.value()).isEqualByComparingTo("0.08");
        assertThat(terms.required(dangerous)).isEqualTo(major);
        assertThat(major.value()).isEqualByComparingTo("0.16");
        assertThat(terms.required(major)).isNull();
    }

    private static Limit parking(RegimeTerms terms, DeficiencyClass severity) {
        return terms.limits().stream()
                .filter(limit ->
                        limit.deficiency() == DeficiencyCode.PARKING_EFFICIENCY && limit.severity() == severity)
                .findFirst()
                .orElseThrow();
    }

    @ParameterizedTest
    @MethodSource("regimes")
    void what_is_judged_by_eye_has_an_item_or_says_that_there_is_none(Regime regime) {
        RegimeTerms terms = regime.termsFor(aSmallVan(), TODAY);

        assertThat(terms.items())
                .extracting(InspectedItem::deficiency)
                .contains(
                        DeficiencyCode.BINDING,
                        DeficiencyCode.FORCE_FLUCTUATION,
                        DeficiencyCode.ABNORMAL_LAG,
                        DeficiencyCode.GRABBING);
    }

    @ParameterizedTest
    @MethodSource("regimes")
    void a_value_of_the_workshop_never_takes_a_class(Regime regime) {
        assertThat(regime.termsFor(aSmallVan(), TODAY).limits())
                .filteredOn(limit -> limit.standing() == LimitStanding.WORKSHOP && limit.severity() != null)
                .isEmpty();
    }

    /** The values of the Eurasian tables are from memory and must not be shown as law. */
    @Test
    void the_unread_values_of_the_eurasian_tables_stand_as_values_of_the_workshop() {
        assertThat(REGIMES.find("eaeu-inspection").termsFor(aSmallVan(), TODAY).limits())
                .filteredOn(limit -> limit.verified() == Verified.MEMORY)
                .isNotEmpty()
                .extracting(Limit::standing)
                .containsOnly(LimitStanding.WORKSHOP);
    }

    @Test
    void the_same_text_has_the_same_version_and_another_text_another() {
        Regime one = Regime.of(YamlFile.ofText("a/test-regime.yaml", minimal("0.30")));
        Regime same = Regime.of(YamlFile.ofText("b/test-regime.yaml", minimal("0.30")));
        Regime other = Regime.of(YamlFile.ofText("a/test-regime.yaml", minimal("0.31")));

        assertThat(one.version()).hasSize(12).isEqualTo(same.version()).isNotEqualTo(other.version());
        assertThat(one.termsFor(aSmallVan(), TODAY).version()).isEqualTo(one.version());
    }

    /** Agency's notice of June 2013: 25 % on a steered axle before 23 June 2013, then 30 % on every axle. */
    @ParameterizedTest(name = "on {0} axle {1}: {2}")
    @CsvSource({
        "2013-06-22, 1, 0.25",
        "2013-06-22, 2, 0.30",
        "2013-06-23, 1, 0.30",
        "2013-06-23, 2, 0.30",
    })
    void the_day_of_the_test_chooses_the_limit(LocalDate day, int axle, String expected) {
        RegimeTerms terms = REGIMES.find("gb-annual").termsFor(aSmallVan(), day);

        assertThat(terms.limits())
                .filteredOn(limit -> limit.deficiency() == DeficiencyCode.SERVICE_IMBALANCE
                        && limit.place().equals(Place.ofAxle(axle)))
                .extracting(Limit::value)
                .usingComparatorForType(BigDecimal::compareTo, BigDecimal.class)
                .containsExactly(new BigDecimal(expected));
    }

    @Test
    void exactly_one_value_holds_for_each_grade_on_any_day() {
        Regime gb = REGIMES.find("gb-annual");
        for (int day = 0; day < 8000; day += 1) {
            RegimeTerms terms =
                    gb.termsFor(aSmallVan(), LocalDate.of(2005, 1, 1).plusDays(day));

            assertThat(terms.limits().stream()
                            .filter(limit -> limit.deficiency() == DeficiencyCode.SERVICE_IMBALANCE
                                    && limit.place().equals(Place.ofAxle(1))
                                    && limit.severity() == DeficiencyClass.MAJOR))
                    .as("day %d", day)
                    .hasSize(1);
        }
    }

    @Test
    void what_is_not_known_of_the_vehicle_is_not_held_against_it_and_is_asked() {
        Vehicle unknown = Vehicles.ofUnknownAge(anyVehicle("M1", LocalDate.of(2016, 5, 1)));

        RegimeTerms terms = REGIMES.find("eu-periodic").termsFor(unknown, TODAY);

        assertThat(minimumEfficiency(terms)).isEqualByComparingTo("0.48");
        assertThat(terms.gaps())
                .singleElement()
                .returns(QuestionCode.LIMIT_MISSING, RegimeGap::code)
                .returns(
                        "Limits of eu-periodic depend on the day of first registration, the day of type approval; until"
                                + " it is known the most lenient value counts",
                        RegimeGap::says);
    }

    @Test
    void a_datum_that_changes_nothing_is_not_asked_for() {
        Vehicle newCar = Vehicles.antilock(Vehicles.approved(anyVehicle("M1", LocalDate.of(2016, 5, 1)), null), null);

        RegimeTerms terms = REGIMES.find("eu-periodic").termsFor(newCar, TODAY);

        assertThat(minimumEfficiency(terms)).isEqualByComparingTo("0.58");
        assertThat(terms.gaps()).isEmpty();
    }

    /** Directive 2014/45/EU, Annex I, item 1.2.2, footnote on cars without an anti-lock system. */
    @Test
    void an_old_car_without_antilock_or_with_an_old_approval_needs_less() {
        Vehicle old = Vehicles.approved(anyVehicle("M1", LocalDate.of(1995, 5, 1)), LocalDate.of(1994, 5, 1));
        Regime eu = REGIMES.find("eu-periodic");

        assertThat(minimumEfficiency(eu.termsFor(old, TODAY))).isEqualByComparingTo("0.50");
        assertThat(minimumEfficiency(eu.termsFor(Vehicles.antilock(old, false), TODAY)))
                .isEqualByComparingTo("0.48");
        assertThat(minimumEfficiency(eu.termsFor(Vehicles.approved(old, LocalDate.of(1991, 9, 30)), TODAY)))
                .isEqualByComparingTo("0.48");
        assertThat(minimumEfficiency(eu.termsFor(Vehicles.approved(old, LocalDate.of(1991, 10, 1)), TODAY)))
                .isEqualByComparingTo("0.50");
    }

    /** Directive 2014/45/EU, Annex I, item 1.2.2, rows of the table not among the vectors. */
    @ParameterizedTest(name = "{0} registered {1}: {2}")
    @CsvSource({
        "M1, 2012-01-01, 0.50",
        "M1, 2012-01-02, 0.58",
        "M1G, 2012-01-02, 0.58",
        "M3, 2016-05-01, 0.50",
        "N1, 2016-05-01, 0.50",
        "N1, 2005-05-01, 0.45",
        "N3, 2016-05-01, 0.50",
        "N3, 1988-12-31, 0.43",
        "N3, 1989-01-01, 0.45",
        "O3, 1988-12-31, 0.40",
        "O3, 1989-01-01, 0.43",
        "L1e, 2016-05-01, 0.42",
        "L3e, 2016-05-01, 0.50",
        "L4e, 2016-05-01, 0.46",
        "L5e, 2016-05-01, 0.44",
        "L6e, 2016-05-01, 0.40"
    })
    void each_category_has_its_efficiency(String category, LocalDate registered, String expected) {
        Vehicle vehicle = Vehicles.approved(anyVehicle(category, registered), registered);

        assertThat(minimumEfficiency(REGIMES.find("eu-periodic").termsFor(vehicle, TODAY)))
                .isEqualByComparingTo(expected);
    }

    @Test
    void a_category_outside_the_regime_is_a_gap() {
        RegimeTerms terms = REGIMES.find("gb-annual").termsFor(anyVehicle("N3", LocalDate.of(2016, 5, 1)), TODAY);

        assertThat(terms.gaps())
                .extracting(RegimeGap::says)
                .contains("gb-annual gives no service efficiency for category N3");
    }

    /** Japan, inspection procedure: each axle of a trailer at least 4.90 N/kg; the trailer as a whole has no figure. */
    @Test
    void a_trailer_whose_axles_have_an_efficiency_lacks_none() {
        RegimeTerms trailer = REGIMES.find("jp-inspection").termsFor(anyVehicle("O2", LocalDate.of(2016, 5, 1)), TODAY);
        RegimeTerms motorcycle =
                REGIMES.find("jp-inspection").termsFor(anyVehicle("L3e", LocalDate.of(2016, 5, 1)), TODAY);

        assertThat(trailer.gaps()).extracting(RegimeGap::code).doesNotContain(QuestionCode.LIMIT_MISSING);
        assertThat(motorcycle.gaps())
                .extracting(RegimeGap::says)
                .contains("jp-inspection gives no service efficiency for category L3e");
    }

    /** MOT inspection manual, 1.4.2: 25 % where the service brake has a single line. */
    @Test
    void a_single_circuit_asks_more_of_the_parking_brake() {
        Regime gb = REGIMES.find("gb-annual");

        assertThat(parking(gb.termsFor(aSmallVan(), TODAY))).isEqualByComparingTo("0.16");
        assertThat(parking(gb.termsFor(Vehicles.circuits(aSmallVan(), CircuitSplit.SINGLE), TODAY)))
                .isEqualByComparingTo("0.25");
        assertThat(parking(gb.termsFor(Vehicles.circuits(aSmallVan(), null), TODAY)))
                .isEqualByComparingTo("0.16");
    }

    /** MOT inspection manual of 1 Jan 2012, 3.8: 4 passenger seats and 1300 kg unladen make 1554 kg. */
    @Test
    void the_mass_of_a_small_bus_follows_from_its_seats() {
        Vehicle bus = new Vehicle(
                "M2",
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                new BigDecimal("1300"),
                null,
                5,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                List.of(),
                null);

        assertThat(REGIMES.find("gb-annual").termsFor(bus, TODAY).masses())
                .singleElement()
                .extracting(MassTerm::kilograms)
                .isEqualTo(new BigDecimal("1554.0"));
    }

    @Test
    void the_reference_weight_falls_back_to_the_unladen_mass_and_a_heavy_van_is_related_to_its_design_weight() {
        Regime gb = REGIMES.find("gb-annual");

        assertThat(gb.termsFor(aSmallVan(), TODAY).masses().get(0))
                .returns(new BigDecimal("1430"), MassTerm::kilograms)
                .returns("reference weight", MassTerm::name);
        assertThat(gb.termsFor(Vehicles.masses(aSmallVan(), "2020", null), TODAY)
                        .masses()
                        .get(0))
                .returns(new BigDecimal("1450"), MassTerm::kilograms)
                .returns("unladen mass and 140 kg", MassTerm::name);
        assertThat(gb.termsFor(Vehicles.masses(aSmallVan(), "3500", "2200"), TODAY)
                        .masses()
                        .get(0))
                .returns(new BigDecimal("3500"), MassTerm::kilograms)
                .returns("design gross weight (secondary)", MassTerm::name);
    }

    @Test
    void without_any_mass_the_mass_is_asked_for() {
        RegimeTerms terms = REGIMES.find("eu-periodic").termsFor(Vehicles.masses(aSmallVan(), null, null), TODAY);

        assertThat(terms.gaps()).extracting(RegimeGap::code).contains(QuestionCode.MASS_MISSING);
    }

    static Stream<List<String>> faults() {
        String good = minimal("30");
        return Stream.of(
                fault(
                        good,
                        "percent: 30",
                        "percent: abc",
                        "28: value 'abc' of 'percent' is not a number; write a decimal such as 0.30"),
                fault(good, "percent: 30", "percent: -3", "28: value -3 of 'percent' is negative; write 0 or more"),
                fault(
                        good,
                        "percent: 30",
                        "newtons: 30",
                        "28: member 'newtons' of 'values' is not known; remove it or write one of"),
                fault(
                        good,
                        "brake: service",
                        "brake: servise",
                        "21: value 'servise' of 'brake' is not a known code; write one of service, parking, secondary"),
                fault(
                        good,
                        "        source: test text",
                        "        sauce: test text",
                        "30: member 'sauce' of 'values' is not known; remove it or write one of"),
                fault(
                        good,
                        "      - class: major\n",
                        "      - class: grave\n",
                        "26: value 'grave' of 'class' is not a known code; write one of minor, major, dangerous"),
                fault(
                        good,
                        "      - class: major\n",
                        "      - share: 2\n",
                        "26: 'share' 2 is not a share; write a decimal up to 1"),
                fault(
                        good,
                        "regime: test-regime",
                        "regime: other",
                        "1: regime 'other' stands in a file of another name; name the file other.yaml or write regime: test-regime"),
                fault(
                        good,
                        "  gravity: 9.81\n",
                        "  gravity: 0\n",
                        "9: 'gravity' 0 is not positive; write 9.80665 or the like"),
                fault(
                        good,
                        "relative-to-higher\n  verified: read\n",
                        "relative-to-higher\n",
                        "4: 'imbalance' lacks the member 'verified'; add 'verified:' with its value"),
                fault(
                        good,
                        "    bound: maximum\n",
                        "    bound: maximum\n    standing: workshop\n",
                        "25: a limit of standing workshop has a class of the regime; remove 'class' from its grades"));
    }

    private static List<String> fault(String text, String good, String bad, String message) {
        return List.of(text.replace(good, bad), message);
    }

    @ParameterizedTest
    @MethodSource("faults")
    void a_wrong_file_is_refused_with_file_line_and_remedy(List<String> fault) {
        assertThatThrownBy(() -> Regimes.of(List.of(YamlFile.ofText("folder/test-regime.yaml", fault.get(0)))))
                .isInstanceOf(YamlException.class)
                .hasMessageStartingWith("folder/test-regime.yaml:" + fault.get(1));
    }

    @Test
    void an_operator_adds_a_regime_by_a_file(@TempDir Path folder) throws IOException {
        Files.writeString(folder.resolve("test-regime.yaml"), minimal("30"));

        Regimes regimes = Regimes.releasedAnd(folder);

        assertThat(regimes.codes()).contains("test-regime", "gb-annual").hasSize(12);
        assertThat(regimes.find("test-regime").termsFor(aSmallVan(), TODAY).limits())
                .hasSize(2)
                .allSatisfy(limit -> assertThat(limit.value()).isEqualByComparingTo("0.30"));
    }

    @Test
    void an_operator_cannot_replace_a_regime_of_the_release(@TempDir Path folder) throws IOException {
        Files.writeString(
                folder.resolve("gb-annual.yaml"), minimal("30").replace("regime: test-regime", "regime: gb-annual"));

        assertThatThrownBy(() -> Regimes.releasedAnd(folder))
                .hasMessage(folder.resolve("gb-annual.yaml")
                        + ":1: there is a regime 'gb-annual' already; give this one a code and a file name of its own");
    }

    @Test
    void a_folder_that_does_not_exist_is_named() {
        assertThatThrownBy(() -> Regimes.releasedAnd(Path.of("no-such-folder")))
                .hasMessage(
                        "The folder no-such-folder named by axlecause.regimes-dir does not exist; create it or leave"
                                + " the setting out.");
    }

    private static List<Vehicle> fleet() {
        List<Vehicle> vehicles = new ArrayList<>(List.of(
                aSmallVan(),
                Vehicles.aLorryThatDrawsATrailer(),
                Vehicles.aTrailer(TrailerKind.SEMI_TRAILER, LocalDate.of(2014, 5, 1), LocalDate.of(2013, 1, 1)),
                Vehicles.circuits(aSmallVan(), CircuitSplit.SINGLE)));
        for (String category : List.of("M1", "M2", "M3", "N1", "N2", "N3", "O2", "O3", "O4", "L1e", "L3e", "L5e")) {
            for (int year : List.of(1960, 1985, 1995, 2011, 2020)) {
                vehicles.add(anyVehicle(category, LocalDate.of(year, 5, 1)));
            }
        }
        return vehicles;
    }

    private static Figure at(Limit limit, BigDecimal value) {
        return new Figure(
                limit.kind(),
                new EntryId("/sites/quay-street/lane-1", "rt-1"),
                Stage.ARRIVAL,
                limit.brake(),
                limit.place(),
                value,
                null,
                true,
                null);
    }

    private static BigDecimal minimumEfficiency(RegimeTerms terms) {
        return value(terms, DeficiencyCode.SERVICE_EFFICIENCY);
    }

    private static BigDecimal parking(RegimeTerms terms) {
        return value(terms, DeficiencyCode.PARKING_EFFICIENCY);
    }

    private static BigDecimal value(RegimeTerms terms, DeficiencyCode code) {
        return terms.limits().stream()
                .filter(limit -> limit.deficiency() == code && limit.severity() == DeficiencyClass.MAJOR)
                .map(Limit::value)
                .findFirst()
                .orElseThrow();
    }

    private static String minimal(String percent) {
        return """
                regime: test-regime
                name: a regime for the test
                imbalance:
                  formula: relative-to-higher
                  verified: read
                  source: test text
                effort:
                  unit: share-of-weight
                  gravity: 9.81
                  verified: read
                  source: test text
                road-test:
                  deceleration-counts: true
                  averaging-begins: 0.8
                  averaging-ends: 0.1
                  verified: read
                  source: test text
                masses: []
                limits:
                  - deficiency: service-imbalance
                    brake: service
                    figure: imbalance
                    place: axle
                    bound: maximum
                    grades:
                      - class: major
                    values:
                      - percent: %s
                        verified: read
                        source: test text
                """.formatted(percent);
    }
}
