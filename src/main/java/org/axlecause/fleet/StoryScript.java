package org.axlecause.fleet;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.axlecause.casefile.DrawnCaseStore.Cause;
import org.axlecause.shared.Json;
import org.jspecify.annotations.Nullable;

/** Writes down the events of a story one after the other, as a workshop would send them. */
final class StoryScript {

    private static final LocalTime PRESENTED = LocalTime.NOON;
    private static final LocalTime DECIDED = LocalTime.of(14, 0);
    private static final LocalTime WORK = LocalTime.of(14, 10);
    private static final LocalTime SECOND_DECISION = LocalTime.of(14, 55);
    private static final LocalTime SECOND_WORK = LocalTime.of(15, 0);
    private static final LocalTime PROVED = LocalTime.of(16, 0);
    private static final LocalTime INSPECTED = LocalTime.of(16, 30);
    private static final LocalTime CLOSED = LocalTime.of(17, 0);
    private static final int SECONDS_APART = 30;
    private static final int LAST_STEPS = 3;
    private static final String RENEW = "renew";

    private final StoryWords words;
    private final Story story;
    private final StoryTable table;
    private final ArrayNode events = Json.mapper().createArrayNode();
    private LocalDate day;
    private LocalTime time = PRESENTED;

    StoryScript(StoryWords words, Story story, StoryTable table) {
        this.words = words;
        this.story = story;
        this.table = table;
        this.day = words.day();
    }

    /** All events so far, as a batch. */
    String batch() {
        return Json.text(events);
    }

    /** What happens until a customer can decide. */
    StoryScript arrives() {
        presented();
        if (story.causes().isEmpty()) {
            test("arrival", 1, null);
            return this;
        }
        Cause root = root();
        test("arrival", root.axle(), root);
        for (JsonNode found : table.cause(root.code()).found()) {
            ObjectNode finding = object("{\"stage\": \"as-found\"}");
            finding.setAll((ObjectNode) found.deepCopy());
            event("finding.recorded", "", at(finding, root));
        }
        return this;
    }

    /** The customer decides on what is proposed; with a repair agrees to what is required and what the cause renews. */
    StoryScript decides(JsonNode judged, List<String> items) {
        LocalTime earliest = day.equals(words.day()) ? DECIDED : SECOND_DECISION;
        time = time.isBefore(earliest) ? earliest : time;
        ArrayNode decisions = Json.mapper().createArrayNode();
        Set<String> agreed = new HashSet<>(items);
        for (JsonNode line : judged.path("scope")) {
            if (line.path("standing").asText().equals("proposed")) {
                boolean renewed = line.path("action").asText().equals(RENEW)
                        && agreed.contains(line.path("item").asText())
                        && isOfTheFault(line.path("place").path("side").asText());
                boolean wanted = renewed || line.path("necessity").asText().equals("required");
                decisions
                        .addObject()
                        .put("id", line.path("id").asText())
                        .put("decision", story.isWorkedOn() && wanted ? "agreed" : "refused")
                        .put("by", "customer");
            }
        }
        if (!decisions.isEmpty()) {
            ObjectNode decided = Json.mapper().createObjectNode();
            decided.set("decisions", decisions);
            event("scope.decided", "", decided);
        }
        return this;
    }

    /** Every open step of the plan but the tests is done, the last ones again where none is open, and all is looked at. */
    StoryScript works(JsonNode judged) {
        if (day.equals(words.day())) {
            day = words.repairDay();
            time = WORK;
        } else {
            time = SECOND_WORK;
        }
        List<String> open = new ArrayList<>();
        List<String> all = new ArrayList<>();
        for (JsonNode step : judged.path("workPlan")) {
            String id = step.path("id").asText();
            if (!id.contains("roller-test")) {
                all.add(id);
                if (step.path("outcome").asText().isEmpty()) {
                    open.add(id);
                }
            }
        }
        List<String> done = open.isEmpty() ? all.subList(Math.max(0, all.size() - LAST_STEPS), all.size()) : open;
        done.forEach(step -> event("work.reported", "", object("{\"step\": \"" + step + "\", \"outcome\": \"done\"}")));
        Cause root = root();
        for (String component : table.cause(root.code()).after()) {
            ObjectNode look = object(
                    "{\"stage\": \"after-work\", \"component\": \"" + component + "\", \"condition\": \"sound\"}");
            if (component.equals("pedal")) {
                event("finding.recorded", "", look.put("check", "pedal-feel-after-work"));
            } else {
                event("finding.recorded", "", at(look.put("check", "leak-look-after-work"), root));
            }
        }
        return this;
    }

    /** The final test shows what the arrival test showed. */
    StoryScript failsFinalTest() {
        test("final", root().axle(), root());
        return this;
    }

    /** The final test shows sound wheels. */
    StoryScript passesFinalTest() {
        time = PROVED;
        test("final", root().axle(), null);
        return this;
    }

    /** The official test, where its result is known, and the closing with the causes that the technician confirms. */
    StoryScript closes() {
        for (String result : List.of("passed", "failed")) {
            if (story.has("official-" + result)) {
                time = INSPECTED;
                event(
                        "inspection.resulted",
                        "",
                        object("{\"result\": \"" + result + "\", \"items\": "
                                + (result.equals("failed") ? "[{\"item\": \"1.1.14\"}]" : "[]") + "}"));
            }
        }
        time = CLOSED;
        ObjectNode closed = Json.mapper().createObjectNode();
        closed.put("outcome", story.closedAs());
        ArrayNode confirmed = closed.putArray("confirmedCauses");
        story.causes().forEach(cause -> confirmed.add(at(object("{\"code\": \"" + cause.code() + "\"}"), cause)));
        event("case.closed", "", closed);
        return this;
    }

    /** Whether a line of this side, or of both, is about the faulty wheel and not about its twin. */
    private boolean isOfTheFault(String side) {
        return side.isEmpty() || side.equals(root().side());
    }

    private Cause root() {
        return story.causes().get(0);
    }

    private void presented() {
        ObjectNode data = object("{\"site\": \"" + words.site() + "\", \"reason\": \"failed-inspection\"}");
        data.put("previousCase", words.previousCase());
        data.put("regime", story.regime());
        String[] layout = story.layout().split("\\+", -1);
        ObjectNode vehicle = data.putObject("vehicle");
        vehicle.put("category", story.category())
                .put("make", words.make())
                .put("model", words.model())
                .put("firstUsed", words.firstUsed().toString())
                .put("firstRegistered", words.firstUsed().toString());
        vehicle.putObject("odometer").put("value", words.kilometres()).put("unit", "km");
        vehicle.setAll(object("""
                {"maximumMass": {"value": 2020, "unit": "kg"}, "unladenMass": {"value": 1310, "unit": "kg"},
                 "testMass": {"value": 1430, "unit": "kg"}, "seats": 5, "drive": "front", "gearbox": "manual",
                 "regenerative": false, "airSuspension": false, "circuitSplit": "diagonal", "antilock": true,
                 "serviceFluid": "DOT 4"}
                """));
        ArrayNode axles = vehicle.putArray("axles");
        axles.addObject().put("number", 1).put("steered", true).put("brake", layout[0]);
        axles.addObject()
                .put("number", 2)
                .put("brake", layout[1])
                .put("parkingBrake", layout[1].startsWith("drum") ? "cable-on-service-shoes" : "cable-on-calliper");
        event("vehicle.presented", "", data);
    }

    private void test(String stage, int axle, @Nullable Cause faulty) {
        String brake = story.causes().isEmpty()
                ? "service"
                : table.cause(root().code()).brake();
        ObjectNode data = object("{\"stage\": \"" + stage + "\", \"brake\": \"" + brake + "\", \"surface\": \"dry\","
                + " \"tester\": {\"accuracy\": {\"value\": 2, \"unit\": \"%\", \"of\": \"reading\"},"
                + " \"speed\": {\"value\": 5, \"unit\": \"km/h\"}}}");
        StoryTable.Axle readings = table.axle(axle);
        BigDecimal force = brake.equals("parking") ? table.value("parking-force") : readings.force();
        ObjectNode tested = data.putArray("axles").addObject().put("number", axle);
        tested.set("load", quantity(readings.load(), "kg"));
        for (String side : List.of("left", "right")) {
            StoryTable.Told told = faulty != null && faulty.side().equals(side) ? table.cause(faulty.code()) : null;
            BigDecimal share = told != null
                    ? told.peak()
                    : side.equals("left") ? BigDecimal.ONE : BigDecimal.ONE.subtract(table.value("sound-difference"));
            ObjectNode wheel = tested.putObject(side);
            wheel.set("peak", quantity(force.multiply(share).setScale(0, RoundingMode.HALF_EVEN), "N"));
            wheel.set("drag", quantity(told != null ? told.drag() : table.value("sound-drag"), "N"));
            wheel.set(
                    "fluctuation", quantity(told != null ? told.fluctuation() : table.value("sound-fluctuation"), "%"));
            wheel.put("locked", false);
        }
        event("roller-test.recorded", "/lane-1", data);
    }

    private static ObjectNode quantity(BigDecimal value, String unit) {
        return Json.mapper().createObjectNode().put("value", value).put("unit", unit);
    }

    private static ObjectNode at(ObjectNode data, Cause cause) {
        return data.put("axle", cause.axle()).put("side", cause.side());
    }

    private static ObjectNode object(String json) {
        return (ObjectNode) Json.read(json);
    }

    private void event(String type, String where, JsonNode data) {
        int number = events.size() + 1;
        ObjectNode event = events.addObject();
        event.put("specversion", "1.0")
                .put("type", "org.axlecause." + type + ".v1")
                .put("source", "/sites/" + words.site() + where)
                .put("id", words.reference() + String.format(Locale.ROOT, "-%03d", number))
                .put("subject", words.reference())
                .put("time", day + "T" + time + (time.getSecond() == 0 ? ":00Z" : "Z"))
                .put("datacontenttype", "application/json");
        event.set("data", data);
        time = time.plusSeconds(SECONDS_APART);
    }
}
