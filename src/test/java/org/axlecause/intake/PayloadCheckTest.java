package org.axlecause.intake;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.axlecause.facts.EntryType;
import org.axlecause.shared.Json;
import org.axlecause.shared.Problem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PayloadCheckTest {

    private static final PayloadCheck CHECK = new PayloadCheck();

    @ParameterizedTest(name = "{0}: {1}")
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '#',
            value = {
                "OBSTACLE_MET | {'component': 'bleed-nipple', 'condition': 'sheared', 'axle': 2, 'side': 'left'}",
                "OBSTACLE_MET | {'component': 'pipe-union', 'condition': 'turns-with-pipe', 'circuit': 1}",
                "SCOPE_DECIDED | {'decisions': [{'id': 'a', 'decision': 'agreed', 'by': 'customer', 'estimate': {'amount': '12.50', 'currency': 'GBP'}}]}",
                "WORK_REPORTED | {'step': 's-1', 'outcome': 'done', 'parts': [{'item': 'wheel-cylinder', 'axle': 2, 'quantity': 1.0}]}",
                "DEPARTURE_RECORDED | {'clause': 'twin-hydraulic-part', 'reason': 'twin renewed last month', 'by': 'R. Ames'}",
                "POLICY_ADOPTED | {'policy': 'house', 'version': 3, 'reason': 'pilot', 'by': 'R. Ames'}",
                "ENTRY_WITHDRAWN | {'source': '/sites/quay-street', 'id': '7', 'reason': 'wrong vehicle'}",
                "VEHICLE_HANDED_OVER | {}",
                "VEHICLE_HANDED_OVER | {'advised': ['rear tyres near the limit'], 'refusalNoted': true}",
                "INSPECTION_RESULTED | {'result': 'passed', 'items': []}",
                "CASE_CLOSED | {'outcome': 'cured', 'confirmedCauses': [{'code': 'hub-seal-leaking', 'axle': 2, 'side': 'right'}]}",
                "ROAD_TEST_RECORDED | {'stage': 'final', 'brake': 'service', 'deviation': 'none'}",
                "FINDING_RECORDED | {'stage': 'as-found', 'component': 'shoe-lining', 'condition': 'worn', 'axle': 2, 'side': 'left', 'measurement': {'quantity': 'lining-thickness', 'value': 0.9, 'unit': 'mm', 'limit': {'value': 0.0625, 'unit': '[in_i]'}}, 'evidence': ['https://photos.example/1']}",
                "ROLLER_TEST_RECORDED | {'stage': 'arrival', 'brake': 'service', 'axles': [{'number': 2, 'left': {'peak': {'value': 161, 'unit': 'daN'}}}]}",
                "ROLLER_TEST_RECORDED | {'stage': 'arrival', 'brake': 'service', 'axles': [{'number': 2, 'trace': {'samplePeriod': {'value': 20, 'unit': 'ms'}, 'unit': 'N', 'left': [-3, null], 'right': [4.5, 6]}}]}",
                "VEHICLE_PRESENTED | {'site': 'quay-street', 'reason': 'complaint', 'vehicle': {'category': 'N1', 'axles': [{'number': 1}, {'number': 2}]}}"
            })
    void what_the_contract_allows_has_nothing_wrong(EntryType type, String data) {
        assertThat(causes(type, data)).isEmpty();
    }

    @ParameterizedTest(name = "{1}")
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '#',
            value = {
                "OBSTACLE_MET | {'condition': 'sheared'} | /component | `component` is missing; expected is the part looked at. Add it.",
                "OBSTACLE_MET | {'component': 'brake', 'condition': 'sheared'} | /component | `component` is \"brake\"; expected is one of the codes wheel-cylinder, shoe-lining",
                "OBSTACLE_MET | {'component': 7, 'condition': 'sheared'} | /component | `component` is 7; expected is the part looked at. Correct it.",
                "OBSTACLE_MET | {'component': 'drum', 'condition': 'oval', 'note': null} | /note | `note` is null; expected is free words in 1 to 4000 characters. Leave it out where it is not known.",
                "OBSTACLE_MET | {'component': 'drum', 'condition': 'oval', 'colour/~': 1} | /colour~1~0 | `colour/~` is an unknown member of `data`; the known ones are component, condition, note, axle, side, spot, circuit. Correct its spelling or leave it out.",
                "OBSTACLE_MET | {'component': 'drum', 'condition': 'oval', 'side': 'left'} | '' | `data` names a side or a spot without its axle; a wheel is `axle` and `side`. Add `axle`.",
                "OBSTACLE_MET | {'component': 'drum', 'condition': 'oval', 'axle': 0} | /axle | `axle` is 0; expected is the number of an axle, counted from the front: 1 to 10. Correct it.",
                "OBSTACLE_MET | {'component': 'drum', 'condition': 'oval', 'axle': 1.5} | /axle | `axle` is 1.5; expected is the number of an axle",
                "OBSTACLE_MET | [] | '' | `data` is a list of 0; expected is Something stood in the way of the work.",
                "VEHICLE_PRESENTED | {'site': 'quay street', 'reason': 'complaint', 'vehicle': {'category': 'N1', 'axles': [{'number': 1}]}} | /site | `site` is \"quay street\"; expected is the code of a site",
                "VEHICLE_PRESENTED | {'site': 'q', 'reason': 'complaint', 'vehicle': {'category': 'N1', 'axles': [{'number': 1}, {'number': 1.0}]}} | /vehicle/axles/1/number | `number` is 1.0 for the second time",
                "VEHICLE_PRESENTED | {'site': 'q', 'reason': 'complaint', 'vehicle': {'category': 'N1', 'firstUsed': '2015-02-30', 'axles': [{'number': 1}]}} | /vehicle/firstUsed | `firstUsed` is \"2015-02-30\"; expected is a day such as \"2015-09-14\". Correct it.",
                "VEHICLE_PRESENTED | {'site': 'q', 'reason': 'complaint', 'vehicle': {'category': 'N1', 'odometer': {'value': 9000000, 'unit': 'km'}, 'axles': [{'number': 1}]}} | /vehicle/odometer | `odometer`: 9000000 km can't be; expected is a length from 0 to 5000000000 m",
                "VEHICLE_PRESENTED | {'site': 'q', 'reason': 'complaint', 'vehicle': {'category': 'N1', 'axles': []}} | /vehicle/axles | `axles` is a list of 0; expected is the axles from the front, 1 to 10. Correct it.",
                "ROAD_TEST_RECORDED | {'stage': 'final', 'brake': 'service'} | '' | `data` is incomplete; expected is A decelerometer or road test was recorded, with at least one of",
                "FINDING_RECORDED | {'stage': 'as-found', 'component': 'drum', 'condition': 'sound', 'evidence': ['javascript:alert(1)']} | /evidence/0 | `evidence[0]` is \"javascript:alert(1)\"; expected is a link that begins with https:// or http://. Correct it.",
                "FINDING_RECORDED | {'stage': 'as-found', 'component': 'drum', 'condition': 'sound', 'measurement': {'quantity': 'drum-ovality', 'value': 0.2, 'unit': 'kg'}} | /measurement | `measurement`: `kg` is a mass; a length is expected: mm, m, km, [in_i], [mi_i]. Send it in one of these units.",
                "FINDING_RECORDED | {'stage': 'as-found', 'component': 'brake-fluid', 'condition': 'sound', 'measurement': {'quantity': 'fluid-boiling-point', 'value': 180, 'unit': 'Cel', 'limit': {'value': 155, 'unit': 'mm'}}} | /measurement/limit | `limit`: `mm` is a length; a temperature is expected: Cel, [degF]. Send it in one of these units.",
                "SCOPE_DECIDED | {'decisions': [{'id': 'a', 'decision': 'agreed', 'by': 'customer', 'estimate': {'amount': '12,50', 'currency': 'GBP'}}]} | /decisions/0/estimate/amount | `amount` is \"12,50\"; expected is a decimal in a string, such as \"12.50\". Correct it.",
                "POLICY_ADOPTED | {'policy': 'house', 'version': 0, 'reason': 'pilot', 'by': 'x'} | /version | `version` is 0; expected is the number of a published version, 1 upwards. Correct it."
            })
    void what_is_wrong_is_named_with_its_place_value_expectation_and_remedy(
            EntryType type, String data, String pointer, String text) {
        assertThat(causes(type, data)).singleElement().satisfies(cause -> {
            assertThat(cause.pointer()).isEqualTo(pointer.equals("''") ? "" : pointer);
            assertThat(cause.text()).startsWith(text);
        });
    }

    @ParameterizedTest(name = "peak {0} {1}")
    @CsvSource(
            delimiter = '|',
            value = {
                "-3 | N | `peak`: -3 N can't be; expected is a force from 0 to 100000 N. Send the reading again or leave it out if it was not measured.",
                "10 | MN | `peak`: 10 MN can't be; expected is a force from 0 to 100000 N. Send the reading again or leave it out if it was not measured.",
                "300 | kg | `peak`: `kg` is a mass; a force is expected: N, kN, daN, kgf, [lbf_av]. Send it in one of these units.",
                "3 | kn | `peak`: `kn` is no unit code of UCUM (codes are case-sensitive); a force is expected: N, kN, daN, kgf, [lbf_av]. Send it in one of these units."
            })
    void an_impossible_peak_is_refused(String value, String unit, String text) {
        String data = rollerTest("'left': {'peak': {'value': " + value + ", 'unit': '" + unit + "'}}");

        assertThat(causes(EntryType.ROLLER_TEST_RECORDED, data))
                .containsExactly(new Problem.Cause("/axles/0/left/peak", text));
    }

    @ParameterizedTest(name = "{0} N")
    @CsvSource({"0", "0.0", "100000", "100000.0"})
    void a_peak_at_the_edge_of_the_plausible_is_taken(String value) {
        String data = rollerTest("'left': {'peak': {'value': " + value + ", 'unit': 'N'}}");

        assertThat(causes(EntryType.ROLLER_TEST_RECORDED, data)).isEmpty();
    }

    @Test
    void an_axle_of_300_tonnes_is_refused() {
        String data = rollerTest("'load': {'value': 300, 'unit': 't'}, 'left': {'locked': true}");

        assertThat(causes(EntryType.ROLLER_TEST_RECORDED, data))
                .containsExactly(
                        new Problem.Cause(
                                "/axles/0/load",
                                "`load`: 300 t can't be; expected is a mass from 1 to 40000 kg. Send the reading again or leave it out if it was not measured."));
    }

    @Test
    void an_axle_without_any_reading_is_incomplete() {
        assertThat(causes(EntryType.ROLLER_TEST_RECORDED, rollerTest("'load': {'value': 500, 'unit': 'kg'}")))
                .containsExactly(
                        new Problem.Cause(
                                "/axles/0",
                                "`axles[0]` is incomplete; expected is an axle with at least one of left, right and trace. Add what is missing."));
    }

    @Test
    void a_wheel_without_any_reading_is_incomplete() {
        assertThat(causes(EntryType.ROLLER_TEST_RECORDED, rollerTest("'left': {}")))
                .containsExactly(
                        new Problem.Cause(
                                "/axles/0/left",
                                "`left` is incomplete; expected is the reading of one wheel, with at least one of peak, drag, fluctuation and locked. Add what is missing."));
    }

    @ParameterizedTest(name = "{0} ms, {1} samples")
    @CsvSource(
            delimiter = '|',
            value = {
                "100 | 600 | ''",
                "1 | 2 | ''",
                "1 | 60000 | ''",
                "0.9 | 2 | /axles/0/trace/samplePeriod",
                "101 | 2 | /axles/0/trace/samplePeriod",
                "100 | 601 | /axles/0/trace",
                "20 | 3001 | /axles/0/trace"
            })
    void a_trace_has_10_to_1000_samples_a_second_over_a_minute_at_most(String period, int samples, String pointer) {
        String row = IntStream.range(0, samples).mapToObj(i -> "5").collect(Collectors.joining(",", "[", "]"));
        String data = rollerTest("'trace': {'samplePeriod': {'value': " + period
                + ", 'unit': 'ms'}, 'unit': 'N', 'left': " + row + ", 'right': " + row + "}");

        assertThat(causes(EntryType.ROLLER_TEST_RECORDED, data))
                .extracting(Problem.Cause::pointer)
                .isEqualTo(pointer.isEmpty() ? List.of() : List.of(pointer));
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '#',
            value = {
                "'unit': 'kg', 'left': [1, 2], 'right': [1, 2] | /axles/0/trace | `trace`: `kg` is a mass; a force is expected",
                "'unit': 'N', 'left': [1, 2, 3], 'right': [1, 2] | /axles/0/trace | `trace`: `right` has 2 samples and `left` has 3; rows of one length are expected. Fill gaps with null.",
                "'unit': 'MN', 'left': [0, 1], 'right': [0, 0] | /axles/0/trace | `trace`: `left[1]` is 1 MN, which can't be; expected are forces from -100000 to 100000 N. Send null where the reading is lost.",
                "'unit': 'N', 'left': [0, 1], 'right': [0, 'x'] | /axles/0/trace/right/1 | `right[1]` is \"x\"; expected is a number or null. Correct it.",
                "'unit': 'N', 'left': [0, 1], 'right': [0, 1], 'pedal': {'unit': 'N', 'force': [0, 6000]} | /axles/0/trace/pedal | `pedal`: `force[1]` is 6000 N, which can't be"
            })
    void a_trace_that_cannot_be_is_refused(String members, String pointer, String text) {
        String data = rollerTest(
                "'trace': {'samplePeriod': {'value': 20, 'unit': 'ms'}, " + members.replace('\'', '"') + "}");

        assertThat(causes(EntryType.ROLLER_TEST_RECORDED, data)).singleElement().satisfies(cause -> {
            assertThat(cause.pointer()).isEqualTo(pointer);
            assertThat(cause.text()).startsWith(text);
        });
    }

    @Test
    void everything_wrong_is_said_at_once() {
        String data = "{'stage': 'before', 'axles': [{'number': 2, 'load': {'value': 5, 'unit': 'N'}, 'left': {'peak':"
                + " {'value': -1, 'unit': 'N'}, 'colour': 1}}], 'surface': 'icy'}";

        assertThat(causes(EntryType.ROLLER_TEST_RECORDED, data))
                .extracting(Problem.Cause::pointer)
                .containsExactlyInAnyOrder(
                        "/stage", "/brake", "/surface", "/axles/0/load", "/axles/0/left/peak", "/axles/0/left/colour");
    }

    private static String rollerTest(String axleMembers) {
        return "{'stage': 'arrival', 'brake': 'service', 'axles': [{'number': 2, " + axleMembers + "}]}";
    }

    private static List<Problem.Cause> causes(EntryType type, String data) {
        return CHECK.causes(type, json(data));
    }

    private static JsonNode json(String text) {
        try {
            return Json.mapper().readTree(text.replace('\'', '"'));
        } catch (JsonProcessingException e) {
            throw new IllegalArgumentException(text, e);
        }
    }
}
