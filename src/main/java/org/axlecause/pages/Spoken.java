package org.axlecause.pages;

import com.fasterxml.jackson.databind.JsonNode;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Says the sentences of a judgement without the codes, entries and places that programs read in them. */
final class Spoken {

    private static final DateTimeFormatter MOMENT =
            DateTimeFormatter.ofPattern("d MMMM uuuu 'at' HH:mm", Locale.ENGLISH);
    private static final Pattern ENTRY = Pattern.compile("/[^\\s#]+#[^\\s;,]+");
    private static final Pattern CODE = Pattern.compile("\\b[a-z]+(?:-[a-z0-9]+)+\\b");
    private static final Pattern AXLE = Pattern.compile("( at | of )?\\baxle ([0-9]+)(?: (left|right))?\\b");
    private static final Pattern CIRCUIT = Pattern.compile("(?: at |, )circuit (?=[0-9])");
    private static final Pattern WHOLE = Pattern.compile("(?: at |, )vehicle\\b");
    /** An entry type is named by the part that tells it, such as finding.recorded. */
    private static final Pattern SENT = Pattern.compile(" (?:as|with) [a-z-]+\\.[a-z]+");

    private final PlainWords words;
    private final int axles;
    private final Map<String, String> names = new HashMap<>();

    /**
     * Sentences of one case.
     *
     * @param codes words of each code that sentences may hold
     */
    Spoken(PlainWords words, Map<String, String> codes, JsonNode document, ZoneId zone) {
        this.words = words;
        this.axles = ComposeSheet.axles(document);
        names.putAll(codes);
        int number = 0;
        for (JsonNode step : document.path("workPlan")) {
            number++;
            names.put(step.path("id").asText(), Integer.toString(number));
        }
        for (JsonNode line : document.path("scope")) {
            names.put(
                    line.path("id").asText(),
                    "\u201c"
                            + words.line(
                                    line.path("action").asText(),
                                    line.path("item").asText(),
                                    PlainWords.place(line.path("place"), axles))
                            + "\u201d");
        }
        for (JsonNode entry : document.path("timeline")) {
            names.put(
                    entry.path("source").asText() + "#" + entry.path("id").asText(),
                    entry(words.optional("entries", entry.path("type").asText(), "text")) + " of "
                            + MOMENT.format(
                                    OffsetDateTime.parse(entry.path("time").asText())
                                            .atZoneSameInstant(zone)));
        }
    }

    private static String entry(@Nullable String name) {
        return name == null ? "an entry" : name;
    }

    /** A sentence with its codes, entries and places in words. */
    String say(String sentence) {
        String said = ENTRY.matcher(sentence).replaceAll(found -> quoted(entry(names.get(found.group()))));
        said = SENT.matcher(said).replaceAll("");
        said = CODE.matcher(said).replaceAll(found -> quoted(names.getOrDefault(found.group(), found.group())));
        said = WHOLE.matcher(said).replaceAll(", whole vehicle");
        said = CIRCUIT.matcher(said).replaceAll(", brake circuit ");
        return PlainWords.unparted(AXLE.matcher(said).replaceAll(this::place));
    }

    private String place(MatchResult found) {
        String axle = PlainWords.axle(Integer.parseInt(found.group(2)), axles);
        String side = found.group(3) == null ? "" : ", " + found.group(3) + " wheel";
        String before = found.group(1) == null ? "" : found.group(1);
        if (before.equals(" at ")) {
            before = ", ";
        } else if (before.equals(" of ") && !axle.startsWith("axle")) {
            before = " of the ";
        }
        return quoted(before + axle + side);
    }

    /** What a question leaves open and what would settle it. */
    String question(JsonNode question) {
        String code = question.path("code").asText();
        String says = words.optional("questions", code, "says");
        String resolve = words.optional("questions", code, "resolve");
        return PlainWords.sentence(PlainWords.placeOrVehicle(question.path("place"), axles)) + ": "
                + PlainWords.stopped(PlainWords.sentence(
                        says == null ? say(question.path("says").asText()) : says))
                + " "
                + PlainWords.stopped(PlainWords.sentence(
                        resolve == null ? say(question.path("resolve").asText()) : resolve));
    }

    private static String quoted(String replacement) {
        return Matcher.quoteReplacement(replacement);
    }
}
