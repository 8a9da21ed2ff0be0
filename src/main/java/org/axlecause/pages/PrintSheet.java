package org.axlecause.pages;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.axlecause.access.Actor;
import org.axlecause.casefile.CaseOnRecord;
import org.axlecause.casefile.ReadCases;
import org.axlecause.casefile.StoredEvent;
import org.axlecause.catalogue.Catalogue;
import org.axlecause.catalogue.CatalogueKind;
import org.axlecause.facts.EntryType;
import org.axlecause.regimes.Regime;
import org.axlecause.regimes.Regimes;
import org.axlecause.shared.Json;
import org.jspecify.annotations.Nullable;

/** Puts a case on a sheet for the customer or the workshop. */
@ApplicationScoped
class PrintSheet {

    private final ReadCases readCases;
    private final Regimes regimes;
    private final PlainWords words;
    private final Map<String, String> codes;
    private final Map<String, String> cautions;

    PrintSheet(ReadCases readCases, Regimes regimes, PlainWords words, Catalogue catalogue) {
        this.readCases = readCases;
        this.regimes = regimes;
        this.words = words;
        this.codes = Stream.of(CatalogueKind.CAUSES, CatalogueKind.CHECKS, CatalogueKind.SYMPTOMS)
                .flatMap(kind -> catalogue.written(kind).stream())
                .collect(Collectors.toUnmodifiableMap(
                        entry -> entry.path("code").asText(),
                        entry -> "\u201c"
                                + PlainWords.sentence(entry.path("text").asText()) + "\u201d",
                        (one, twin) -> one));
        this.cautions = catalogue.written(CatalogueKind.CAUTIONS).stream()
                .collect(Collectors.toUnmodifiableMap(
                        entry -> entry.path("code").asText(),
                        entry -> entry.path("text").asText()));
    }

    /**
     * A case for a page.
     *
     * @param document its document
     * @param sheet what the workshop's sheet says of it
     * @param findings data of the findings that stand, by id of their event
     * @param spoken says the sentences of its judgement
     */
    record OnPage(JsonNode document, Sheet sheet, Map<String, JsonNode> findings, Spoken spoken) {}

    /** What the pages show of a case; refuses where there is none or the actor may not see it. */
    OnPage onPage(String reference, Actor actor) {
        CaseOnRecord record = readCases.onRecord(reference, actor);
        JsonNode document = json(record.served().json());
        Map<String, JsonNode> findings = new LinkedHashMap<>();
        standing(EntryType.FINDING_RECORDED, document, record)
                .forEach(event -> findings.put(event.id().id(), data(event)));
        return new OnPage(
                document,
                sheet(document, record, Audience.WORKSHOP, Lettering.TEXT),
                findings,
                spoken(document, record));
    }

    private Spoken spoken(JsonNode document, CaseOnRecord record) {
        return new Spoken(words, codes, document, record.zone());
    }

    /**
     * A sheet that is put on a screen or on paper.
     *
     * @param html its page, for a screen
     * @param paper the same sheet for paper
     * @param date when what it shows last changed
     */
    record Printed(String html, Supplier<String> paper, Instant date) {

        /** The sheet as PDF. */
        byte[] pdf() {
            return PdfPrinter.print(paper.get(), date);
        }
    }

    /** The sheet of a case; refuses where there is none or the actor may not see it. */
    Printed sheet(String reference, Audience audience, Medium screen, Actor actor) {
        CaseOnRecord record = readCases.onRecord(reference, actor);
        JsonNode document = json(record.served().json());
        OffsetDateTime latest = ComposeSheet.latestEntry(document);
        return new Printed(
                page(document, record, audience, screen),
                () -> page(document, record, audience, Medium.PAPER),
                latest == null ? Instant.EPOCH : latest.toInstant());
    }

    private String page(JsonNode document, CaseOnRecord record, Audience audience, Medium medium) {
        Sheet sheet = sheet(document, record, audience, medium.lettering());
        return (audience == Audience.CUSTOMER ? Sheets.customer(sheet, medium) : Sheets.workshop(sheet, medium))
                .render();
    }

    private Sheet sheet(JsonNode document, CaseOnRecord record, Audience audience, Lettering lettering) {
        return new ComposeSheet(words, document, audience, record.zone(), spoken(document, record))
                .sheet(
                        record.siteName(),
                        regime(document),
                        new SheetCharts(
                                standing(EntryType.ROLLER_TEST_RECORDED, document, record).stream()
                                        .map(PrintSheet::data)
                                        .toList(),
                                lettering),
                        cautions);
    }

    private @Nullable String regime(JsonNode document) {
        Regime regime = regimes.find(document.at("/regime/code").asText());
        return regime == null ? null : PlainWords.sentence(regime.name());
    }

    /** The entries of a type that were not withdrawn. */
    private static List<StoredEvent> standing(EntryType type, JsonNode document, CaseOnRecord record) {
        Set<String> standing = new TreeSet<>();
        document.path("timeline").forEach(entry -> {
            if (!entry.path("withdrawn").asBoolean()) {
                standing.add(
                        entry.path("source").asText() + " " + entry.path("id").asText());
            }
        });
        return record.events().stream()
                .filter(event -> EntryType.of(event.type()) == type)
                .filter(event ->
                        standing.contains(event.id().source() + " " + event.id().id()))
                .toList();
    }

    private static JsonNode data(StoredEvent event) {
        return json(event.body()).path("data");
    }

    private static JsonNode json(String text) {
        try {
            return Json.mapper().readTree(text);
        } catch (JsonProcessingException broken) {
            throw new IllegalStateException("What is kept is plain JSON", broken);
        }
    }
}
