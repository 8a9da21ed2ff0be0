package org.axlecause.intake;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.axlecause.facts.EntryType;
import org.axlecause.shared.Problem;

/** Finds what no schema can say: lists that name the same axle twice. */
final class ContentCheck {

    private ContentCheck() {}

    static List<Problem.Cause> causes(EntryType type, JsonNode data) {
        return switch (type) {
            case VEHICLE_PRESENTED -> repeatedAxles(data.path("vehicle").path("axles"), "/vehicle/axles/");
            case ROLLER_TEST_RECORDED -> repeatedAxles(data.path("axles"), "/axles/");
            default -> List.of();
        };
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
