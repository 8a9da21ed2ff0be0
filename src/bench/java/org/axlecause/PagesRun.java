package org.axlecause;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.axlecause.bench.Measured;
import org.axlecause.bench.ServiceRun;
import org.axlecause.pages.NumbersQuestion;

/**
 * How long people wait for each page among many stored cases, {@code -Dbench.stored=1000000} of them, all with histories and
 * documents as long as they are not more than a million; one reader at a time. Answers about numbers are kept, so each such
 * question is also asked right after another case has ended, which makes its answer another one, and right after the cells
 * have changed too, so that nothing is kept at all. {@code -Dbench.folder=DIR} keeps the chain there, and fills none where
 * one is kept already.
 */
public final class PagesRun implements ServiceRun {

    private static final double LONGEST_MILLIS = 50;
    private static final int OK = 200;
    private static final double HALF = 0.5;
    private static final double WORST = 0.95;
    private static final String DRAFT = """
            {"means": "how our sites repair",
             "chain": [{"clause": "twin-hydraulic-part", "necessity": "required"},
                       {"clause": "pad-renewal-thickness", "value": 3.5, "unit": "mm", "necessity": "recommended"}]}
            """;

    @Override
    public List<Measured> run() throws Exception {
        String kept = System.getProperty("bench.folder", "");
        Path folder = kept.isEmpty() ? Files.createTempDirectory("axlecause-bench") : Path.of(kept);
        boolean filled = Files.exists(folder.resolve("data"));
        try (Installation installation = new Installation(folder)) {
            List<Measured> lines = new ArrayList<>();
            if (!filled) {
                lines.add(StoredRun.filled(installation));
            }
            try (PackagedService service = IngestRun.service(installation).start()) {
                service.putSite();
                writePolicy(service);
                Map<String, byte[]> pages = pages(service);
                lines.addAll(asked("page", pages, request -> StoredRun.answers(service, request)));
                Map<String, byte[]> questions = new LinkedHashMap<>(pages);
                questions.keySet().removeIf(page -> !page.startsWith("/numbers/"));
                EndedCases ended = new EndedCases(service);
                lines.addAll(asked(
                        "page, a case ended before",
                        questions,
                        request -> StoredRun.answers(service, request, ended::end)));
                lines.addAll(asked(
                        "page, cells changed before",
                        questions,
                        request -> StoredRun.answers(service, request, () -> {
                            ended.end();
                            StoredRun.changeCells(installation);
                        })));
            }
            return lines;
        }
    }

    /** Writes a policy with a version and a draft, unless the chain that was kept has them. */
    private static void writePolicy(PackagedService service) throws Exception {
        if (service.get("/v1/policies/repairs/draft").statusCode() == OK) {
            return;
        }
        service.put("/v1/policies/repairs/draft", DRAFT);
        service.post(
                "/v1/policies/repairs/versions",
                "{\"effectiveFrom\": \"%s\", \"reason\": \"measured\"}"
                        .formatted(LocalDate.now(ZoneOffset.UTC).plusYears(1)));
        service.put("/v1/policies/repairs/draft", DRAFT.replace("3.5", "4"));
    }

    /** Asks for a page again and again. */
    private interface Asking {
        LoadLoop.Outcome answers(byte[] request) throws Exception;
    }

    /** Cases that are repaired and proved, one before each answer. */
    private static final class EndedCases {

        private final PackagedService service;
        private final BenchedEvents events = new BenchedEvents();
        private final String run = "PAGES-" + System.currentTimeMillis();
        private int number;

        EndedCases(PackagedService service) {
            this.service = service;
        }

        private void end() {
            number++;
            List<String> repair = events.repair(run + "-" + number, 0, events.repairLength());
            try {
                if (service.batch(BenchedEvents.batch(repair)).statusCode() != OK) {
                    throw new IllegalStateException("A case was not taken");
                }
            } catch (IOException unreachable) {
                throw new UncheckedIOException(unreachable);
            } catch (InterruptedException stopped) {
                Thread.currentThread().interrupt();
                throw new IllegalStateException("Stopped while a case was sent", stopped);
            }
        }
    }

    private static List<Measured> asked(String kind, Map<String, byte[]> pages, Asking asking) throws Exception {
        Map<String, List<Double>> middles = new TreeMap<>();
        Map<String, List<Double>> tails = new TreeMap<>();
        for (int round = 0; round <= IngestRun.ROUNDS; round++) {
            for (Map.Entry<String, byte[]> page : pages.entrySet()) {
                LoadLoop.Outcome outcome = asking.answers(page.getValue());
                if (round > 0) {
                    middles.computeIfAbsent(page.getKey(), any -> new ArrayList<>())
                            .add(outcome.millis(HALF));
                    tails.computeIfAbsent(page.getKey(), any -> new ArrayList<>())
                            .add(outcome.millis(WORST));
                }
            }
        }
        List<Measured> lines = new ArrayList<>();
        pages.keySet().forEach(page -> {
            lines.add(
                    Measured.atMost(LONGEST_MILLIS, kind + ", p50", page, middles.getOrDefault(page, List.of()), "ms"));
            lines.add(Measured.of(kind + ", p95", page, tails.getOrDefault(page, List.of()), "ms"));
        });
        return lines;
    }

    /** Requests of the pages by their addresses, of a case that has been through everything where they show one. */
    private static Map<String, byte[]> pages(PackagedService service) throws Exception {
        String reference = service.json("/v1/cases?status=closed&limit=1")
                .at("/cases/0/reference")
                .asText();
        String step =
                service.json("/v1/cases/" + reference).at("/workPlan/0/id").asText();
        String cause = service.json("/v1/catalogue/causes").at("/0/code").asText();
        Map<String, byte[]> pages = new LinkedHashMap<>();
        Stream.of(
                        Stream.of(
                                "/",
                                "/bay",
                                "/bay/new",
                                "/bay/CASE",
                                "/bay/CASE/obstacle?step=" + step,
                                "/desk",
                                "/desk?q=Velmar",
                                "/desk?q=nothing-of-that-name",
                                "/desk?status=closed",
                                "/desk/CASE",
                                "/sheets/CASE/customer",
                                "/sheets/CASE/workshop",
                                "/rulebook",
                                "/rulebook?q=hub%20seal",
                                "/rulebook/causes",
                                "/rulebook/causes/" + cause,
                                "/rulebook/case/CASE",
                                "/policy",
                                "/policy/named/repairs",
                                "/policy/named/repairs/effective?site=site-003&version=1",
                                "/policy/named/repairs/comparison?from=1&to=draft",
                                "/policy/named/repairs/draft",
                                "/policy/named/repairs/publication",
                                "/policy/departures",
                                "/numbers",
                                "/numbers/causes?by=ageBand",
                                "/numbers/returns?by=item"),
                        Stream.of(NumbersQuestion.values()).map(question -> "/numbers/" + question))
                .flatMap(addresses -> addresses)
                .forEach(address ->
                        pages.put(address, LoadLoop.get(address.replace("CASE", reference), "Accept: text/html\r\n")));
        return pages;
    }
}
