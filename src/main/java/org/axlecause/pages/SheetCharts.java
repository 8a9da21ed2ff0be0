package org.axlecause.pages;

import com.fasterxml.jackson.databind.JsonNode;
import io.quarkus.qute.RawString;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** Draws what a case holds of forces: the two wheels of each axle, and the traces of its roller tests. */
final class SheetCharts {

    private static final List<String> SIDES = List.of("left", "right");
    private static final String BEFORE = "on arrival";
    private static final String AFTER = "after the work";
    private static final double SECOND = 1000;

    private final List<JsonNode> rollerTests;
    private final Lettering lettering;

    /**
     * Charts of a case.
     *
     * @param rollerTests data of its roller tests that are not withdrawn, in the order that counts
     * @param lettering how the words inside them are drawn
     */
    SheetCharts(List<JsonNode> rollerTests, Lettering lettering) {
        this.rollerTests = List.copyOf(rollerTests);
        this.lettering = lettering;
    }

    /** One picture for each brake and axle of concern, with the wheels before and after the work. */
    List<Sheet.Picture> wheels(JsonNode document, Set<Integer> concerned, int axles) {
        Map<Key, Map<String, BigDecimal>> forces = new TreeMap<>();
        for (JsonNode figure : document.path("figures")) {
            boolean peak = figure.path("figure").asText().equals("peak") && figure.has("value");
            int axle = figure.at("/place/axle").asInt();
            String stage = figure.path("stage").asText();
            if (peak && !stage.equals("diagnostic") && (concerned.isEmpty() || concerned.contains(axle))) {
                forces.computeIfAbsent(new Key(axle, figure.path("brake").asText()), key -> new LinkedHashMap<>())
                        .put(
                                stage + figure.at("/place/side").asText(),
                                figure.at("/value/value").decimalValue());
            }
        }
        List<Sheet.Picture> pictures = new ArrayList<>();
        forces.forEach((key, found) -> {
            List<WheelForceChart.Bar> bars = new ArrayList<>();
            for (String side : SIDES) {
                add(bars, side, BEFORE, found.get("arrival" + side));
                add(bars, side, AFTER, found.get("final" + side));
            }
            if (!bars.isEmpty()) {
                String brake = PlainWords.brake(key.brake());
                String title = "The two wheels of the " + PlainWords.axle(key.axle(), axles) + ", " + brake;
                pictures.add(new Sheet.Picture(
                        title,
                        new RawString(WheelForceChart.of(
                                bars, lettering, "wheels-" + key.axle() + "-" + key.brake(), title, described(bars)))));
            }
        });
        return pictures;
    }

    /** The forces over time of every test that recorded them. */
    List<Sheet.Picture> traces(int axles) {
        return drawn(recorded(), axles);
    }

    /** The forces over time of the foot brake on arrival and in the last test after the work, for each axle of concern. */
    List<Sheet.Picture> firstAndLastTraces(Set<Integer> concerned, int axles) {
        Map<Key, Recorded> chosen = new TreeMap<>();
        for (Recorded recorded : recorded()) {
            String stage = recorded.test().path("stage").asText();
            Key key = new Key(recorded.axle(), stage);
            if (!recorded.test().path("brake").asText().equals("service")
                    || !(concerned.isEmpty() || concerned.contains(recorded.axle()))) {
                continue;
            }
            if (stage.equals("arrival")) {
                chosen.putIfAbsent(key, recorded);
            } else if (stage.equals("final")) {
                chosen.put(key, recorded);
            }
        }
        List<Recorded> inOrder = new ArrayList<>(recorded());
        inOrder.retainAll(chosen.values());
        return drawn(inOrder, axles);
    }

    private List<Recorded> recorded() {
        List<Recorded> recorded = new ArrayList<>();
        for (JsonNode test : rollerTests) {
            for (JsonNode axle : test.path("axles")) {
                if (axle.path("trace").has("samplePeriod")) {
                    recorded.add(new Recorded(test, axle.path("number").asInt(), axle.path("trace")));
                }
            }
        }
        return recorded;
    }

    private List<Sheet.Picture> drawn(List<Recorded> chosen, int axles) {
        List<Sheet.Picture> pictures = new ArrayList<>();
        for (Recorded recorded : chosen) {
            pictures.add(picture(recorded, pictures.size() + 1, axles));
        }
        return pictures;
    }

    private Sheet.Picture picture(Recorded recorded, int number, int axles) {
        JsonNode test = recorded.test();
        int axle = recorded.axle();
        JsonNode trace = recorded.trace();
        double period = trace.at("/samplePeriod/value").asDouble()
                * (trace.at("/samplePeriod/unit").asText().equals("s") ? SECOND : 1);
        String unit = trace.path("unit").asText();
        List<TraceChart.Line> lines = new ArrayList<>();
        for (String side : SIDES) {
            if (trace.has(side)) {
                lines.add(new TraceChart.Line(side + " wheel", samples(trace.path(side))));
            }
        }
        String title = "Force over time, " + PlainWords.axle(axle, axles) + ", "
                + PlainWords.brake(test.path("brake").asText()) + ", test "
                + stage(test.path("stage").asText());
        String described = "Left wheel solid line, right wheel dashed line. "
                + String.join(
                        ", ",
                        lines.stream()
                                .map(line -> "highest force of the " + line.name() + " " + highest(line) + " " + unit)
                                .toList())
                + ".";
        return new Sheet.Picture(
                title,
                new RawString(TraceChart.of(lines, period, unit, lettering, "trace-" + number, title, described)));
    }

    private static String stage(String stage) {
        return switch (stage) {
            case "arrival" -> BEFORE;
            case "final" -> AFTER;
            default -> "during the work";
        };
    }

    private static List<@Nullable Double> samples(JsonNode written) {
        List<@Nullable Double> samples = new ArrayList<>();
        written.forEach(sample -> samples.add(sample.isNumber() ? sample.doubleValue() : null));
        return samples;
    }

    private static String highest(TraceChart.Line line) {
        return line.samples().stream()
                .filter(sample -> sample != null)
                .max(Comparator.naturalOrder())
                .map(sample -> PlainWords.plain(BigDecimal.valueOf(sample)))
                .orElse("not recorded");
    }

    private static void add(List<WheelForceChart.Bar> bars, String side, String when, @Nullable BigDecimal force) {
        if (force != null) {
            bars.add(new WheelForceChart.Bar(side + " wheel", when, force));
        }
    }

    private static String described(List<WheelForceChart.Bar> bars) {
        return String.join(
                        "; ",
                        bars.stream()
                                .map(bar -> bar.wheel() + " " + PlainWords.plain(bar.newtons()) + " N " + bar.when())
                                .toList())
                + ".";
    }

    private record Recorded(JsonNode test, int axle, JsonNode trace) {}

    private record Key(int axle, String brake) implements Comparable<Key> {

        @Override
        public int compareTo(Key other) {
            return Comparator.comparingInt(Key::axle)
                    .thenComparing(Key::brake, Comparator.reverseOrder())
                    .compare(this, other);
        }
    }
}
