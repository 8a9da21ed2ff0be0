package org.axlecause.intake;

import com.fasterxml.jackson.databind.JsonNode;
import java.time.Duration;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.axlecause.facts.EntryType;
import org.axlecause.shared.Problem;

/** Finds what no schema can say: lists that name the same axle twice, identification numbers that can't be any. */
final class ContentCheck {

    private static final String VIN = "/vehicle/vin";
    private static final Duration CLOCKS_MAY_DIFFER = Duration.ofMinutes(5);

    private ContentCheck() {}

    static List<Problem.Cause> causes(EntryType type, JsonNode data) {
        return switch (type) {
            case VEHICLE_PRESENTED -> {
                List<Problem.Cause> causes = repeatedAxles(data.path("vehicle").path("axles"), "/vehicle/axles/");
                causes.addAll(aboutVin(data.path("vehicle").path("vin"), true));
                yield causes;
            }
            case ROLLER_TEST_RECORDED -> repeatedAxles(data.path("axles"), "/axles/");
            default -> List.of();
        };
    }

    /** What is odd but not wrong: a check digit that doesn't fit where none is required. */
    static List<Problem.Cause> warnings(EntryType type, JsonNode data) {
        return type == EntryType.VEHICLE_PRESENTED
                ? aboutVin(data.path("vehicle").path("vin"), false)
                : List.of();
    }

    /** A warning about a time that is still to come by more than clocks differ. */
    static List<Problem.Cause> warnings(OffsetDateTime time, OffsetDateTime now) {
        return time.isAfter(now.plus(CLOCKS_MAY_DIFFER))
                ? List.of(new Problem.Cause(
                        "/time",
                        "`time` is " + time + ", which is "
                                + Duration.between(now, time).toMinutes()
                                + " minutes ahead of the clock here; expected are at most "
                                + CLOCKS_MAY_DIFFER.toMinutes()
                                + ". Set the sender's clock; the event counts at the time that it states."))
                : List.of();
    }

    /** The number itself is personal data and not repeated in any message. */
    private static List<Problem.Cause> aboutVin(JsonNode vin, boolean wrong) {
        if (!vin.isTextual()) {
            return List.of();
        }
        String number = vin.textValue();
        if (!Vin.hasForm(number)) {
            return wrong
                    ? List.of(new Problem.Cause(
                            VIN,
                            "`vin` is no identification number by ISO 3779; expected are 17 digits and capital letters"
                                    + " without I, O and Q. Correct it, or leave it out for a vehicle that has none."))
                    : List.of();
        }
        return !Vin.hasItsCheckDigit(number) && Vin.isNorthAmerican(number) == wrong
                ? List.of(new Problem.Cause(
                        VIN,
                        "The check digit of `vin`, its ninth character, doesn't fit the others"
                                + (wrong
                                        ? ", as it must in North America. Correct the number."
                                        : "; outside North America it need not. Compare the number with the vehicle.")))
                : List.of();
    }

    private static List<Problem.Cause> repeatedAxles(JsonNode axles, String pointer) {
        List<Problem.Cause> causes = new ArrayList<>();
        Set<String> seen = new TreeSet<>();
        for (int i = 0; i < axles.size(); i++) {
            JsonNode number = axles.get(i).path("number");
            if (number.isNumber()
                    && !seen.add(number.decimalValue().stripTrailingZeros().toPlainString())) {
                causes.add(new Problem.Cause(
                        pointer + i + "/number",
                        "`number` is " + number.asText()
                                + " for the second time; one entry per axle is expected. Correct the number or join the"
                                + " two entries."));
            }
        }
        return causes;
    }
}
