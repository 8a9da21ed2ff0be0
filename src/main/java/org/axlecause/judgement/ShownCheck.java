package org.axlecause.judgement;

import java.math.BigDecimal;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.axlecause.diagnosis.NextCheck;
import org.axlecause.diagnosis.NextCheck.Answer;
import org.axlecause.diagnosis.NextCheck.Blank;
import org.axlecause.diagnosis.Risk;
import org.axlecause.facts.Candidate;
import org.axlecause.facts.CautionCode;
import org.axlecause.facts.CheckCode;
import org.axlecause.facts.EntryType;
import org.axlecause.facts.FindingStage;
import org.axlecause.facts.Place;
import org.axlecause.facts.Stage;

/**
 * A check worth making, as the case document shows it.
 *
 * @param check the check
 * @param text how it is done
 * @param place where
 * @param expectedInformation bits that it is expected to tell
 * @param minutes minutes it takes, access included
 * @param access how far the vehicle must be taken apart, 0 on its wheels to 4 hydraulics opened
 * @param risk harm it can do to parts
 * @param cautions cautions before it
 * @param lookingOver whether it is asked because the axle is opened
 * @param wouldSettle causes that its answers can prove or rule out
 * @param answers every possible outcome as an event to fill in and send
 */
public record ShownCheck(
        CheckCode check,
        String text,
        Place place,
        BigDecimal expectedInformation,
        int minutes,
        int access,
        Risk risk,
        List<CautionCode> cautions,
        boolean lookingOver,
        List<Candidate> wouldSettle,
        List<ShownAnswer> answers) {

    static ShownCheck of(NextCheck next, List<ShownAnswer> answers) {
        return new ShownCheck(
                next.check(),
                next.text(),
                next.place(),
                next.expectedInformation(),
                next.minutes(),
                next.access(),
                next.risk(),
                next.cautions(),
                next.lookingOver(),
                next.wouldSettle(),
                answers);
    }

    /**
     * One answer as the type and data of an event; a text in braces is a blank to fill in with a number.
     *
     * @param says the answer in words
     * @param type type of the event
     * @param data its data
     * @param blanks names of the blanks with what belongs there
     */
    public record ShownAnswer(String says, String type, Map<String, Object> data, List<Blank> blanks) {

        private static final Pattern READING = Pattern.compile("(peak|drag)Axle(\\d+)(Left|Right)");

        public ShownAnswer {
            data = Collections.unmodifiableMap(data);
        }

        /** All answers of a check. */
        static List<ShownAnswer> of(NextCheck next, FindingStage stage) {
            return next.answers().stream()
                    .map(answer -> of(answer, next.check(), stage))
                    .toList();
        }

        private static ShownAnswer of(Answer answer, CheckCode check, FindingStage stage) {
            return answer.rollerTest() == null
                    ? new ShownAnswer(
                            answer.says(),
                            EntryType.FINDING_RECORDED.toString(),
                            finding(answer, check, stage),
                            answer.blanks())
                    : new ShownAnswer(
                            answer.says(),
                            EntryType.ROLLER_TEST_RECORDED.toString(),
                            rollerTest(answer),
                            answer.blanks());
        }

        private static Map<String, Object> finding(Answer answer, CheckCode check, FindingStage stage) {
            Map<String, Object> data = new LinkedHashMap<>();
            data.put("stage", stage.toString());
            data.put("component", String.valueOf(answer.component()));
            data.put("condition", String.valueOf(answer.condition()));
            putPlace(data, answer.place());
            data.put("check", check.toString());
            if (answer.agent() != null) {
                data.put("agent", answer.agent().toString());
            }
            for (Blank blank : answer.blanks()) {
                Map<String, Object> measurement = new LinkedHashMap<>();
                measurement.put("quantity", String.valueOf(blank.quantity()));
                measurement.putAll(open(blank));
                data.put("measurement", measurement);
            }
            return data;
        }

        private static Map<String, Object> rollerTest(Answer answer) {
            Map<Integer, Map<String, Object>> axles = new TreeMap<>();
            for (Blank blank : answer.blanks()) {
                Matcher reading = READING.matcher(blank.name());
                if (reading.matches()) {
                    int number = Integer.parseInt(reading.group(2));
                    Map<String, Object> axle = axles.computeIfAbsent(number, ShownAnswer::axle);
                    wheel(axle, reading.group(3).toLowerCase(Locale.ROOT)).put(reading.group(1), open(blank));
                }
            }
            Map<String, Object> data = new LinkedHashMap<>();
            data.put("stage", Stage.DIAGNOSTIC.toString());
            data.put("brake", String.valueOf(answer.rollerTest()));
            data.put("axles", List.copyOf(axles.values()));
            return data;
        }

        private static Map<String, Object> axle(int number) {
            Map<String, Object> axle = new LinkedHashMap<>();
            axle.put("number", number);
            return axle;
        }

        @SuppressWarnings("unchecked")
        private static Map<String, Object> wheel(Map<String, Object> axle, String side) {
            return (Map<String, Object>) axle.computeIfAbsent(side, empty -> new LinkedHashMap<String, Object>());
        }

        private static Map<String, Object> open(Blank blank) {
            Map<String, Object> quantity = new LinkedHashMap<>();
            quantity.put("value", "{" + blank.name() + "}");
            quantity.put("unit", blank.unit());
            return quantity;
        }

        private static void putPlace(Map<String, Object> data, Place place) {
            if (place.axle() != null) {
                data.put("axle", place.axle());
            }
            if (place.side() != null) {
                data.put("side", place.side().toString());
            }
            if (place.spot() != null) {
                data.put("spot", place.spot().toString());
            }
            if (place.circuit() != null) {
                data.put("circuit", place.circuit());
            }
        }
    }
}
