package org.axlecause;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.axlecause.bench.Measured;
import org.axlecause.bench.ServiceRun;

/** One case that gets a thousand events, one by one: another event may cost as much more as its history is longer. */
public final class HotCaseRun implements ServiceRun {

    private static final int EVENTS = 1000;
    private static final int WINDOW = 50;
    private static final int HALF = EVENTS / 2;
    private static final int MINUTE = 60;

    @Override
    public List<Measured> run() throws Exception {
        Path folder = Files.createTempDirectory("axlecause-bench");
        List<Double> millis = new ArrayList<>();
        try (Installation installation = new Installation(folder);
                PackagedService service = IngestRun.service(installation).start()) {
            service.putSite();
            told(service, "WARM", new ArrayList<>());
            told(service, "HOT", millis);
        }
        List<Double> middle = millis.subList(HALF - WINDOW, HALF);
        List<Double> last = millis.subList(EVENTS - WINDOW, EVENTS);
        double growth = Measured.of("", "", last, "").score()
                / Measured.of("", "", middle, "").score();
        return List.of(
                Measured.of("hot case", "event of " + WINDOW, millis.subList(0, WINDOW), "ms"),
                Measured.of("hot case", "event of " + HALF, middle, "ms"),
                Measured.of("hot case", "event of " + EVENTS, last, "ms"),
                Measured.atMost(2, "hot case", "growth as history doubles", List.of(growth), ""));
    }

    private static void told(PackagedService service, String reference, List<Double> millis)
            throws IOException, InterruptedException {
        for (int number = 0; number < EVENTS; number++) {
            String id = reference + "-" + number;
            String event = number == 0
                    ? Load.presented(reference, id)
                    : Load.found(reference, id, number % MINUTE, number % 2 == 0 ? "worn" : "glazed");
            long begin = System.nanoTime();
            int status = service.take(event).statusCode();
            millis.add((System.nanoTime() - begin) / 1e6);
            if (status != 200) {
                throw new IllegalStateException("Event " + number + " was answered by " + status);
            }
        }
    }
}
