package org.axlecause;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.axlecause.bench.Measured;
import org.axlecause.bench.ServiceRun;

/**
 * Single events taken by two replicas on one database, beside one. Where two replicas, their database and the load can't have
 * cores of their own, the one replica fills the machine already, and the table says that this wasn't measurable.
 */
public final class ReplicasRun implements ServiceRun {

    private static final String NAME = "ingest";
    private static final String WHAT = "two replicas / one";

    /** A replica and what its events cost the database fill two cores; two of both, and two for the load. */
    private static final int CORES = 6;

    private static final double LEAST = 1.6;

    @Override
    public List<Measured> run() throws Exception {
        int cores = Runtime.getRuntime().availableProcessors();
        if (cores < CORES) {
            return List.of(new Measured(
                    NAME,
                    WHAT,
                    Double.NaN,
                    Double.NaN,
                    "",
                    "at least " + LEAST + ": not measurable on " + cores + " cores, " + CORES + " are needed"));
        }
        Path folder = Files.createTempDirectory("axlecause-bench");
        try (Installation installation = new Installation(folder);
                PackagedService one = IngestRun.service(installation).start();
                PackagedService other = IngestRun.service(installation).start()) {
            one.putSite();
            IngestLoad alone = new IngestLoad(one.port(), IngestRun.TIME);
            IngestLoad both = new IngestLoad(List.of(one.port(), other.port()), IngestRun.TIME);
            List<Double> ratios = new ArrayList<>();
            for (int round = 0; round <= IngestRun.ROUNDS; round++) {
                double rate = alone.singles();
                double rateOfBoth = both.singles();
                if (round > 0) {
                    ratios.add(rateOfBoth / rate);
                }
            }
            return List.of(Measured.atLeast(LEAST, NAME, WHAT, ratios, ""));
        }
    }
}
