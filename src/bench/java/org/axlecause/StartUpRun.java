package org.axlecause;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.axlecause.bench.Measured;
import org.axlecause.bench.ServiceRun;

/**
 * How long the packaged service needs until it is ready, beside an empty one with its extensions, and what it holds idle.
 * Both start with the options that ship and an archive of their classes, as the container file makes it; how long the
 * service takes without is told beside it.
 */
public final class StartUpRun implements ServiceRun {

    private static final int ROUNDS = IngestRun.ROUNDS;
    private static final int IDLE_SECONDS = 30;
    private static final String WRITE = "-XX:ArchiveClassesAtExit=";
    private static final String READ = "-XX:SharedArchiveFile=";
    private static final double KILOBYTES = 1024;
    private static final Pattern RESIDENT = Pattern.compile("VmRSS:\\s+(\\d+) kB");

    @Override
    public List<Measured> run() throws Exception {
        Path folder = Files.createTempDirectory("axlecause-bench");
        List<Double> baselines = new ArrayList<>();
        List<Double> services = new ArrayList<>();
        List<Double> plain = new ArrayList<>();
        List<Double> ratios = new ArrayList<>();
        List<Double> resident = new ArrayList<>();
        try (Installation installation = new Installation(folder)) {
            installation.replica().start().close();
            String ofBaseline = folder.resolve("baseline.jsa").toString();
            String ofService = folder.resolve("axlecause.jsa").toString();
            writeArchive(BaselineService.on(installation), ofBaseline);
            writeArchive(installation.replica(), ofService);
            for (int round = 0; round < ROUNDS; round++) {
                try (PackagedService baseline = BaselineService.on(installation).asShipped(READ + ofBaseline)) {
                    baselines.add(secondsToReady(baseline));
                }
                try (PackagedService service = installation.replica().asShipped(READ + ofService)) {
                    services.add(secondsToReady(service));
                    TimeUnit.SECONDS.sleep(IDLE_SECONDS);
                    resident.add(residentMegabytes(service));
                }
                try (PackagedService service = installation.replica().atFullSpeed()) {
                    plain.add(secondsToReady(service));
                }
                ratios.add(services.get(round) / baselines.get(round));
            }
        }
        return List.of(
                Measured.of("start-up", "baseline service", baselines, "s"),
                Measured.of("start-up", "the service", services, "s"),
                Measured.of("start-up", "the service, without archive", plain, "s"),
                Measured.atMost(1.5, "start-up", "service / baseline", ratios, ""),
                Measured.atMost(300, "memory", "resident, idle", resident, "MB"));
    }

    /** Without the options that ship: they name an archive, and where that is missing none can be written. */
    private static void writeArchive(PackagedService service, String archive) throws IOException, InterruptedException {
        service.atFullSpeed().with("JAVA_TOOL_OPTIONS", WRITE + archive).start().close();
    }

    private static double secondsToReady(PackagedService service) throws IOException, InterruptedException {
        long begin = System.nanoTime();
        service.start();
        return (System.nanoTime() - begin) / 1e9;
    }

    static double residentMegabytes(PackagedService service) throws IOException {
        Matcher resident = RESIDENT.matcher(Files.readString(
                Path.of("/proc", String.valueOf(service.process().pid()), "status")));
        if (!resident.find()) {
            throw new IllegalStateException("The system tells no resident memory of a process");
        }
        return Double.parseDouble(resident.group(1)) / KILOBYTES;
    }
}
