package org.axlecause.pages;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.axlecause.facts.EntryType;
import org.axlecause.shared.Json;

/** Makes entries of the fields of a form; what they may say, the intake decides. */
final class ReadEntries {

    private static final List<String> SIDES = List.of("left", "right");
    private static final int LEAST_AXLES = 2;
    private static final int LAST_AXLE = 10;
    private static final int SHOWN_OF_A_REFERENCE = 8;

    private final Form form;

    ReadEntries(Form form) {
        this.form = form;
    }

    /** Reference of a case that is opened: the one that was typed, else one made of the site and the form. */
    String reference() {
        String typed = form.text("reference");
        String entry = form.text("entry");
        return typed.isEmpty()
                ? form.text("site") + "-"
                        + entry.substring(0, Math.min(SHOWN_OF_A_REFERENCE, entry.length()))
                                .toUpperCase(Locale.ROOT)
                : typed;
    }

    /** A vehicle that was presented. */
    SendEntries.Entry presented() {
        ObjectNode data = object();
        data.put("site", form.needed("site", "The site"));
        data.put("reason", form.needed("reason", "The reason"));
        ObjectNode vehicle = data.putObject("vehicle");
        vehicle.put("category", form.needed("category", "The kind of vehicle"));
        putText(vehicle, "make");
        putText(vehicle, "model");
        putText(vehicle, "registration");
        putText(vehicle, "firstUsed");
        putMeasure(vehicle, "testMass", "testMass", "kg", "The mass at the test");
        ArrayNode axles = vehicle.putArray("axles");
        for (int number = 1; number <= LAST_AXLE; number++) {
            String brake = number <= LEAST_AXLES
                    ? form.needed("axle." + number, "The brake of axle " + number)
                    : form.text("axle." + number);
            if (!brake.isEmpty()) {
                String[] words = brake.split(" ", -1);
                ObjectNode axle = axles.addObject();
                axle.put("number", axles.size());
                axle.put("brake", words[0]);
                if (words.length > 1) {
                    axle.put("parkingBrake", words[1]);
                }
            }
        }
        ArrayNode complaints = object().putArray("complaints");
        form.all("complaint").forEach(complaints::add);
        if (!complaints.isEmpty()) {
            data.set("complaints", complaints);
        }
        form.check();
        return new SendEntries.Entry("", EntryType.VEHICLE_PRESENTED, data);
    }

    /** The roller tests that readings or a trace were keyed in for, brake by brake. */
    List<SendEntries.Entry> rollerTests() {
        List<SendEntries.Entry> tests = new ArrayList<>();
        for (String brake : List.of("service", "parking")) {
            ArrayNode axles = axles(brake);
            if (!axles.isEmpty()) {
                ObjectNode data = object();
                data.put("stage", form.needed("stage", "The time of the test"));
                data.put("brake", brake);
                data.set("axles", axles);
                tests.add(new SendEntries.Entry(brake, EntryType.ROLLER_TEST_RECORDED, data));
            }
        }
        if (tests.isEmpty()) {
            form.wrong("service.1.left", "No reading is filled in. Key in the force of at least one wheel.");
        }
        form.check();
        return tests;
    }

    private ArrayNode axles(String brake) {
        ArrayNode axles = Json.mapper().createArrayNode();
        for (int number = 1; number <= LAST_AXLE; number++) {
            ObjectNode axle = object();
            String words = " of axle " + number;
            if (brake.equals("service")) {
                putMeasure(axle, "load", "load." + number, "kg", "The load" + words);
            }
            boolean read = false;
            for (String side : SIDES) {
                ObjectNode wheel = object();
                String field = brake + "." + number + "." + side;
                putMeasure(wheel, "peak", field, unit(), "The force" + words + " " + side);
                putMeasure(wheel, "drag", field + ".drag", unit(), "The force with no brake" + words + " " + side);
                if (!form.text(field + ".locked").isEmpty()) {
                    wheel.put("locked", true);
                }
                if (!wheel.isEmpty()) {
                    axle.set(side, wheel);
                    read = true;
                }
            }
            if (brake.equals("service") && !form.text("trace." + number).isEmpty()) {
                axle.set("trace", trace(number));
                read = true;
            }
            if (read) {
                axle.put("number", number);
                axles.add(axle);
            }
        }
        return axles;
    }

    private String unit() {
        String unit = form.text("unit");
        return unit.isEmpty() ? "N" : unit;
    }

    /** A trace of lines with left and right force, and the force on the pedal where it was recorded; blank is a gap. */
    private ObjectNode trace(int number) {
        ObjectNode trace = object();
        putMeasure(trace, "samplePeriod", "period." + number, "ms", "The time between two readings");
        trace.put("unit", unit());
        ArrayNode left = trace.putArray("left");
        ArrayNode right = trace.putArray("right");
        ArrayNode pedal = Json.mapper().createArrayNode();
        int line = 0;
        for (String text : form.text("trace." + number).split("\\R", -1)) {
            line++;
            if (text.isBlank() || (line == 1 && text.chars().anyMatch(Character::isLetter))) {
                continue;
            }
            String[] columns = text.split("[;\\t]|,(?=\\s)|(?<=\\s),", -1);
            columns = columns.length == 1 ? text.split(",", -1) : columns;
            if (columns.length < 2) {
                form.wrong(
                        "trace." + number,
                        "Line " + line + " of the trace is \"" + shortened(text)
                                + "\"; expected are the force of the left wheel and of the right wheel, parted by ;");
                break;
            }
            sample(left, columns[0], line, number);
            sample(right, columns[1], line, number);
            if (columns.length > 2) {
                sample(pedal, columns[2], line, number);
            }
        }
        if (pedal.size() == left.size() && !pedal.isEmpty()) {
            ObjectNode force = trace.putObject("pedal");
            force.put("unit", "N");
            force.set("force", pedal);
        }
        return trace;
    }

    private void sample(ArrayNode samples, String text, int line, int axle) {
        String number = text.strip().replace(',', '.');
        if (number.isEmpty()) {
            samples.addNull();
        } else if (number.matches("-?[0-9]{1,9}([.][0-9]{1,6})?")) {
            samples.add(new BigDecimal(number));
        } else {
            form.wrong(
                    "trace." + axle,
                    "Line " + line + " of the trace has \"" + shortened(text) + "\"; expected is a number.");
            samples.addNull();
        }
    }

    private static String shortened(String text) {
        return text.length() > 40 ? text.substring(0, 40) + "…" : text;
    }

    /** An answer to a check, with its blanks filled in. */
    SendEntries.Entry answer() {
        EntryType type = form.text("type").equals(EntryType.ROLLER_TEST_RECORDED.toString())
                ? EntryType.ROLLER_TEST_RECORDED
                : EntryType.FINDING_RECORDED;
        Map<String, BigDecimal> numbers = new TreeMap<>();
        for (String blank : form.namesAfter("blank.")) {
            BigDecimal number = form.number("blank." + blank, "The reading");
            if (number == null) {
                form.wrong("blank." + blank, "A reading is missing. Fill in each number of the answer.");
            } else {
                numbers.put("{" + blank + "}", number);
            }
        }
        JsonNode data = json("data");
        form.check();
        return new SendEntries.Entry("", type, filled(data, numbers));
    }

    private JsonNode filled(JsonNode node, Map<String, BigDecimal> numbers) {
        if (node.isTextual()) {
            BigDecimal number = numbers.get(node.asText());
            return number == null ? node : Json.mapper().getNodeFactory().numberNode(number);
        }
        if (node.isObject()) {
            ObjectNode object = object();
            node.properties().forEach(member -> object.set(member.getKey(), filled(member.getValue(), numbers)));
            return object;
        }
        if (node.isArray()) {
            ArrayNode array = Json.mapper().createArrayNode();
            node.forEach(item -> array.add(filled(item, numbers)));
            return array;
        }
        return node;
    }

    /** Something that was seen. */
    SendEntries.Entry finding() {
        ObjectNode data = object();
        data.put("stage", form.needed("stage", "The time of the look"));
        data.put("component", form.needed("component", "The part"));
        data.put("condition", form.needed("condition", "What was found"));
        putPlace(data, form.text("place"));
        putText(data, "note");
        form.check();
        return new SendEntries.Entry("", EntryType.FINDING_RECORDED, data);
    }

    /** Something that stood in the way; the button says what. */
    SendEntries.Entry obstacle() {
        String[] met = form.needed("obstacle", "What stood in the way").split(" ", -1);
        ObjectNode data = object();
        data.put("component", met[0]);
        data.put("condition", met.length > 1 ? met[1] : "");
        putPlace(data, form.text("place"));
        form.check();
        return new SendEntries.Entry("", EntryType.OBSTACLE_MET, data);
    }

    /** A step of the plan that was done or not. */
    SendEntries.Entry step() {
        ObjectNode data = object();
        data.put("step", form.needed("step", "The step"));
        data.put("outcome", form.needed("outcome", "What became of the step"));
        form.check();
        return new SendEntries.Entry("", EntryType.WORK_REPORTED, data);
    }

    /** Decisions on lines, those without a choice or with the one that stands left out. */
    SendEntries.Entry decisions() {
        ObjectNode data = object();
        ArrayNode decisions = data.putArray("decisions");
        boolean allRequired = !form.text("all").isEmpty();
        for (String line : form.namesAfter("shown.")) {
            JsonNode shown = json("shown." + line);
            String chosen = form.text("decision." + line);
            boolean byAll = chosen.isEmpty()
                    && allRequired
                    && shown.path("necessity").asText().equals("required")
                    && form.text("standing." + line).isEmpty();
            boolean marked = !chosen.isEmpty()
                    && chosen.equals(form.text("marked." + line))
                    && form.text("reason." + line).isEmpty();
            if ((!chosen.isEmpty() && !marked) || byAll) {
                ObjectNode decision = decisions.addObject();
                decision.put("id", line);
                decision.put("decision", byAll ? "agreed" : chosen);
                decision.put("by", form.text("by." + line));
                if (!form.text("reason." + line).isEmpty()) {
                    decision.put("reason", form.text("reason." + line));
                }
                shown.properties().forEach(member -> decision.set(member.getKey(), member.getValue()));
            }
        }
        if (decisions.isEmpty()) {
            form.wrong("decision", "Nothing new is decided. Choose yes, no or later for at least one line.");
        }
        form.check();
        return new SendEntries.Entry("", EntryType.SCOPE_DECIDED, data);
    }

    /** The end of a case, as the workshop sees it. */
    SendEntries.Entry closed() {
        ObjectNode data = object();
        data.put("outcome", form.needed("outcome", "The outcome"));
        form.check();
        return new SendEntries.Entry("", EntryType.CASE_CLOSED, data);
    }

    private JsonNode json(String field) {
        try {
            JsonNode read = Json.mapper().readTree(form.text(field));
            if (read != null && read.isObject()) {
                return read;
            }
        } catch (JsonProcessingException noJson) {
            // Why nothing here: what is said about it is the same as about JSON of another kind.
        }
        form.wrong(field, "The form is damaged. Open the page again and send it from there.");
        return object();
    }

    /** A place such as 2 left: axle and, where it has one, side. */
    private static void putPlace(ObjectNode data, String place) {
        String[] parts = place.split(" ", -1);
        if (parts[0].matches("[0-9]{1,2}")) {
            data.put("axle", Integer.parseInt(parts[0]));
            if (parts.length > 1 && !parts[1].isEmpty()) {
                data.put("side", parts[1]);
            }
        }
    }

    private void putText(ObjectNode data, String field) {
        String text = form.text(field);
        if (!text.isEmpty()) {
            data.put(field, text);
        }
    }

    private void putMeasure(ObjectNode data, String member, String field, String unit, String words) {
        BigDecimal number = form.number(field, words);
        if (number != null) {
            ObjectNode measure = data.putObject(member);
            measure.put("value", number);
            measure.put("unit", unit);
        }
    }

    private static ObjectNode object() {
        return Json.mapper().createObjectNode();
    }
}
