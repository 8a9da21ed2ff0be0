package org.axlecause.bench;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.axlecause.casefile.EntryReader;
import org.axlecause.diagnosis.CauseWeights;
import org.axlecause.facts.AxleReading;
import org.axlecause.facts.Entry;
import org.axlecause.facts.EntryId;
import org.axlecause.facts.EntryType;
import org.axlecause.facts.History;
import org.axlecause.facts.Recorded;
import org.axlecause.facts.RollerTestRecorded;
import org.axlecause.facts.ScopeDecided;
import org.axlecause.facts.SiteTerms;
import org.axlecause.facts.VehiclePresented;
import org.axlecause.facts.WheelReading;
import org.axlecause.judgement.Matter;
import org.axlecause.measurement.MeasureTest;
import org.axlecause.policy.PolicyFile;
import org.axlecause.shared.Json;
import org.jspecify.annotations.Nullable;

/** Cases to judge: the beginning of a scenario, up to so many facts that the workshop told. */
public final class BenchedCase {

    private static final Path SCENARIOS = Path.of("src/test/resources/scenarios");
    private static final String STORY = "oiled-lining-and-seized-cable-repaired";
    private static final String TEST = "wet-rollers-say-nothing";
    private static final int PEAKS_ONLY = 10;
    private static final SiteTerms SITE = new SiteTerms("quay-street", ZoneId.of("Europe/London"), "GBP", "gb-annual");

    private BenchedCase() {}

    /** The shortest case of at least so many facts: up to ten, peaks and axle loads alone; else the start of a repair. */
    public static Matter of(int facts) {
        List<Recorded> entries = facts <= PEAKS_ONLY
                ? entries(TEST).stream().map(BenchedCase::peaksAlone).toList()
                : entries(STORY);
        List<Recorded> told = new ArrayList<>();
        int count = 0;
        for (Recorded recorded : entries) {
            if (count < facts) {
                told.add(recorded);
                count += facts(recorded.entry());
            }
        }
        return matter(told);
    }

    /** The repair from the presentation to its proof. */
    public static Matter wholeRepair() {
        return matter(entries(STORY));
    }

    /** A scenario as it stands after each of its events, in the order in which they happened. */
    public static List<Matter> steps(String scenario) {
        List<Recorded> entries = entries(scenario);
        return IntStream.rangeClosed(1, entries.size())
                .mapToObj(told -> matter(entries.subList(0, told)))
                .toList();
    }

    /** A test with the traces of one axle. */
    public static Matter traces() {
        return matter(entries("trace-of-an-oval-drum"));
    }

    /** How many facts the workshop told: the vehicle, its axles, each reading, finding, decision and report. */
    public static int facts(Matter matter) {
        return matter.history().entries().stream()
                .mapToInt(recorded -> facts(recorded.entry()))
                .sum();
    }

    private static int facts(Entry entry) {
        if (entry instanceof VehiclePresented presented) {
            return 1
                    + presented.vehicle().axles().size()
                    + presented.notice().size()
                    + presented.complaints().size()
                    + presented.recentWork().size();
        }
        if (entry instanceof RollerTestRecorded test) {
            return test.conditions().size()
                    + test.axles().stream().mapToInt(BenchedCase::readings).sum();
        }
        return entry instanceof ScopeDecided decided ? decided.decisions().size() : 1;
    }

    private static int readings(AxleReading axle) {
        return (int) Stream.of(axle.left(), axle.right())
                        .filter(Objects::nonNull)
                        .flatMap(wheel -> Stream.of(
                                wheel.peak(), wheel.drag(), wheel.fluctuation(), wheel.locked(), wheel.expected()))
                        .filter(Objects::nonNull)
                        .count()
                + (axle.load() == null ? 0 : 1)
                + (axle.trace() == null ? 0 : 1);
    }

    private static Recorded peaksAlone(Recorded recorded) {
        if (!(recorded.entry() instanceof RollerTestRecorded test)) {
            return recorded;
        }
        RollerTestRecorded peaks = peaksAlone(test);
        return new Recorded(recorded.id(), recorded.time(), peaks, MeasureTest.of(recorded.id(), peaks));
    }

    /** The same test with nothing but peaks and axle loads. */
    public static RollerTestRecorded peaksAlone(RollerTestRecorded test) {
        return new RollerTestRecorded(
                test.stage(),
                test.brake(),
                test.axles().stream()
                        .map(axle -> new AxleReading(
                                axle.number(), axle.load(), peak(axle.left()), peak(axle.right()), null))
                        .toList(),
                test.tester(),
                null,
                null,
                List.of());
    }

    private static @Nullable WheelReading peak(@Nullable WheelReading wheel) {
        return wheel == null ? null : new WheelReading(wheel.peak(), null, null, null, null);
    }

    private static List<Recorded> entries(String scenario) {
        List<Recorded> entries = new ArrayList<>();
        for (Path file : given(SCENARIOS.resolve(scenario))) {
            read(file).forEach(event -> entries.add(recorded(event)));
        }
        entries.sort(null);
        return entries;
    }

    /** The files of a scenario that tell events, in the order in which they are sent. */
    private static List<Path> given(Path scenario) {
        try (Stream<Path> files = Files.list(scenario)) {
            return files.filter(file -> file.getFileName().toString().startsWith("given"))
                    .sorted()
                    .toList();
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }

    private static JsonNode read(Path file) {
        try {
            return Json.mapper().readTree(Files.readString(file));
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }

    private static Recorded recorded(JsonNode event) {
        EntryType type = Arrays.stream(EntryType.values())
                .filter(one -> one.toString().equals(event.path("type").asText()))
                .findFirst()
                .orElseThrow();
        Entry entry = EntryReader.read(type, event.path("data"));
        EntryId id = new EntryId(event.path("source").asText(), event.path("id").asText());
        return new Recorded(
                id,
                OffsetDateTime.parse(event.path("time").asText()),
                entry,
                entry instanceof RollerTestRecorded test ? MeasureTest.of(id, test) : null);
    }

    private static Matter matter(List<Recorded> entries) {
        return new Matter(new History("QS-1", entries), SITE, PolicyFile.baseline(), CauseWeights.BOOK, null, null);
    }
}
