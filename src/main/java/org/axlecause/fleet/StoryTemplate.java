package org.axlecause.fleet;

import com.fasterxml.jackson.databind.JsonNode;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import org.axlecause.casefile.CopiedCaseStore.CopiedEvent;
import org.axlecause.casefile.CopiedCaseStore.Copy;
import org.axlecause.casefile.CopiedCaseStore.Figures;
import org.axlecause.casefile.CopiedCaseStore.Told;
import org.axlecause.casefile.CopiedCaseStore.ToldEvent;
import org.axlecause.intake.Canonical;
import org.axlecause.shared.Json;
import org.axlecause.shared.Sha256;

/** A told and judged story, ready to be copied with other words. */
final class StoryTemplate {

    private static final LocalTime RECEIVED = LocalTime.of(17, 30);

    private final Told told;
    private final LocalDate day;
    private final StoryText document;
    private final StoryText judgedOf;
    private final List<EventText> events = new ArrayList<>();
    private final List<EventText> eventsOfReturn = new ArrayList<>();
    private final List<FigureText> figures = new ArrayList<>();

    private record EventText(
            StoryText source,
            StoryText id,
            String type,
            boolean later,
            LocalTime time,
            String actor,
            StoryText body,
            StoryText content) {}

    private record FigureText(StoryText source, StoryText id, StoryText figures) {}

    private StoryTemplate(Told told, StoryWords words) {
        this.told =
                new Told(told.status(), "", told.policy(), told.rulebook(), "", told.causes(), List.of(), List.of());
        this.day = words.day();
        List<String> all = words.all();
        this.document = StoryText.of(told.document(), all);
        this.judgedOf = StoryText.of(told.judgedOf(), all);
        String previous = "\"previousCase\":\"" + words.previousCase() + "\",";
        for (ToldEvent event : told.events()) {
            String content = content(event);
            if (!Sha256.of(content).equals(event.digest())) {
                throw new IllegalStateException("The content of " + event.id() + " has another digest than was kept");
            }
            EventText text = text(event, event.body(), content, all);
            eventsOfReturn.add(text);
            events.add(
                    event.body().contains(previous)
                            ? text(event, event.body().replace(previous, ""), content.replace(previous, ""), all)
                            : text);
        }
        told.figures()
                .forEach(made -> figures.add(new FigureText(
                        StoryText.of(made.source(), all),
                        StoryText.of(made.id(), all),
                        StoryText.of(made.figures(), all))));
        if (document.count(StoryWords.KILOMETRES) != 1) {
            throw new IllegalStateException("The distance of the vehicle stands "
                    + document.count(StoryWords.KILOMETRES) + " times in a told document; once is expected");
        }
    }

    /** What was told in these words. */
    static StoryTemplate of(Told told, StoryWords words) {
        return new StoryTemplate(told, words);
    }

    private static String content(ToldEvent event) {
        JsonNode body = Json.read(event.body());
        return Canonical.content(event.type(), body.path("subject").asText(), event.time(), body.path("data"));
    }

    private EventText text(ToldEvent event, String body, String content, List<String> words) {
        return new EventText(
                StoryText.of(event.source(), words),
                StoryText.of(event.id(), words),
                event.type(),
                !event.time().toLocalDate().equals(day),
                event.time().toLocalTime(),
                event.actor(),
                StoryText.of(body, words),
                StoryText.of(content, words));
    }

    /** The case that these words tell. */
    Copy with(StoryWords words) {
        List<String> all = words.all();
        List<CopiedEvent> copied = new ArrayList<>();
        for (EventText event : words.previousCase().isEmpty() ? events : eventsOfReturn) {
            copied.add(new CopiedEvent(
                    event.source.with(all),
                    event.id.with(all),
                    event.type,
                    at(event.later ? words.repairDay() : words.day(), event.time),
                    event.actor,
                    event.body.with(all),
                    event.content.with(all)));
        }
        return new Copy(
                words.reference(),
                words.site(),
                told.status(),
                copied.get(0).time(),
                words.day(),
                words.make(),
                words.model(),
                document.with(all),
                told.policy(),
                told.rulebook(),
                judgedOf.with(all),
                told.causes(),
                copied,
                figures.stream()
                        .map(made -> new Figures(made.source.with(all), made.id.with(all), made.figures.with(all)))
                        .toList(),
                at(words.repairDay(), RECEIVED));
    }

    private static OffsetDateTime at(LocalDate day, LocalTime time) {
        return day.atTime(time).atOffset(ZoneOffset.UTC);
    }
}
