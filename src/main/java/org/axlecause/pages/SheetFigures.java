package org.axlecause.pages;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.axlecause.facts.FigureKind;
import org.axlecause.facts.VerificationOutcome;
import org.jspecify.annotations.Nullable;

/** Puts the figures of a case document into the words of a sheet, with what the last test proves. */
final class SheetFigures {

    private static final Set<String> BETTER_HIGH = Stream.of(FigureKind.values())
            .filter(FigureKind::isBetterHigh)
            .map(FigureKind::toString)
            .collect(Collectors.toSet());

    private final PlainWords words;
    private final JsonNode document;
    private final Audience audience;
    private final int axles;

    SheetFigures(PlainWords words, JsonNode document, Audience audience, int axles) {
        this.words = words;
        this.document = document;
        this.audience = audience;
        this.axles = axles;
    }

    /** What the last test proves; null where none was driven after the work. */
    Sheet.@Nullable Proof proof() {
        JsonNode verification = document.path("verification");
        String outcome = verification.path("outcome").asText();
        if (outcome.isEmpty() || outcome.equals(VerificationOutcome.NOT_TESTED.toString())) {
            return null;
        }
        String verdict =
                switch (outcome) {
                    case "verified" -> "The repair is proven: the last test and the checks after the work agree.";
                    case "improved" -> "Better than before, but not proven yet.";
                    default -> "The fault is not cured.";
                };
        return new Sheet.Proof(
                verdict,
                against(verification),
                ComposeSheet.stream(verification.path("comparisons"))
                        .filter(row -> audience != Audience.CUSTOMER || isTelling(row))
                        .map(this::compared)
                        .toList());
    }

    /** What keeps the repair from being proven. */
    private static List<String> against(JsonNode verification) {
        Set<String> open = ComposeSheet.stream(verification.path("open"))
                .map(JsonNode::asText)
                .collect(Collectors.toSet());
        return ComposeSheet.stream(verification.path("because"))
                .filter(reason -> open.contains(reason.at("/facts/0").asText()))
                .map(reason -> PlainWords.unparted(reason.path("says").asText()))
                .distinct()
                .toList();
    }

    private static boolean isTelling(JsonNode row) {
        String kind = row.path("kind").asText();
        return kind.equals("imbalance")
                || (kind.equals("efficiency") && !row.path("place").has("axle"))
                || misses(row, "withinLimit")
                || misses(row, "withinTarget")
                || (row.has("target") && row.has("before") && wasShort(row));
    }

    private static boolean misses(JsonNode row, String member) {
        return row.has(member) && !row.path(member).asBoolean();
    }

    private static boolean wasShort(JsonNode row) {
        int beside = row.at("/before/value")
                .decimalValue()
                .compareTo(row.at("/target/value").decimalValue());
        return isMinimum(row) ? beside < 0 : beside > 0;
    }

    private static boolean isMinimum(JsonNode row) {
        return BETTER_HIGH.contains(row.path("kind").asText());
    }

    private Sheet.FigureRow compared(JsonNode row) {
        return new Sheet.FigureRow(
                figureName(row.path("brake").asText(), row.path("kind").asText(), row.path("place")),
                PlainWords.figure(row.path("before")),
                PlainWords.figure(row.path("after")),
                limit(row),
                verdict(row),
                isTelling(row));
    }

    private static String verdict(JsonNode row) {
        if (misses(row, "withinLimit")) {
            return "limit missed";
        }
        if (misses(row, "withinTarget")) {
            return "aim missed";
        }
        return hasLimit(row) || row.has("target") ? "kept" : "";
    }

    /** A limit of nothing is kept by every wheel that brakes at all, and says nothing on a sheet. */
    private static boolean hasLimit(JsonNode row) {
        return row.has("limit") && row.at("/limit/value").asDouble() > 0;
    }

    private static String limit(JsonNode row) {
        List<String> limits = new ArrayList<>();
        if (hasLimit(row)) {
            limits.add(unparted((isMinimum(row) ? "at least " : "at most ") + PlainWords.figure(row.path("limit"))));
        }
        if (row.has("target")) {
            limits.add(unparted(
                    (isMinimum(row) ? "aim at least " : "aim at most ") + PlainWords.figure(row.path("target"))));
        }
        return String.join(", ", limits);
    }

    private static String unparted(String words) {
        return words.replace(" ", PlainWords.NO_BREAK);
    }

    private String figureName(String brake, String kind, JsonNode place) {
        return PlainWords.sentence(PlainWords.brake(brake)) + ", " + PlainWords.placeOrVehicle(place, axles) + ": "
                + words.word("figures", kind, "text");
    }

    /** Every figure that has words, on arrival and after the work. */
    List<Sheet.FigureRow> figures() {
        record Key(String brake, String kind, JsonNode place) {}
        Map<Key, JsonNode[]> rows = new LinkedHashMap<>();
        for (JsonNode figure : document.path("figures")) {
            String kind = figure.path("figure").asText();
            if (figure.has("value") && words.optional("figures", kind, "text") != null) {
                int column = figure.path("stage").asText().equals("final") ? 1 : 0;
                rows.computeIfAbsent(
                                        new Key(figure.path("brake").asText(), kind, figure.path("place")),
                                        key -> new JsonNode[2])[column] =
                        figure.path("value");
            }
        }
        List<Sheet.FigureRow> figures = new ArrayList<>();
        rows.forEach((key, values) -> figures.add(new Sheet.FigureRow(
                figureName(key.brake(), key.kind(), key.place()),
                values[0] == null ? PlainWords.NOT_MEASURED : PlainWords.figure(values[0]),
                values[1] == null ? PlainWords.NOT_MEASURED : PlainWords.figure(values[1]),
                "",
                "",
                false)));
        return figures;
    }
}
