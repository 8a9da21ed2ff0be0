package org.axlecause;

import java.io.Closeable;
import java.util.List;
import java.util.Random;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.TimeUnit;

/** Routes as a balancer does: to the replicas whose readiness said yes when it was last asked. */
final class Balancer implements Closeable {

    private static final int ASK_EVERY_MILLIS = 100;

    private final List<PackagedService> replicas = new CopyOnWriteArrayList<>();
    private final Thread asking = new Thread(this::ask, "balancer");
    private volatile List<PackagedService> ready = List.of();

    Balancer() {
        asking.start();
    }

    void add(PackagedService replica) {
        replicas.add(replica);
    }

    void remove(PackagedService replica) {
        replicas.remove(replica);
    }

    /** One of the replicas that are ready. */
    PackagedService pick(Random random) throws InterruptedException {
        List<PackagedService> now = ready;
        while (now.isEmpty()) {
            TimeUnit.MILLISECONDS.sleep(ASK_EVERY_MILLIS);
            now = ready;
        }
        return now.get(random.nextInt(now.size()));
    }

    private void ask() {
        try {
            while (!Thread.currentThread().isInterrupted()) {
                List<PackagedService> yes = new CopyOnWriteArrayList<>();
                for (PackagedService replica : replicas) {
                    if (replica.statusOf("/q/health/ready") == 200) {
                        yes.add(replica);
                    }
                }
                ready = yes;
                TimeUnit.MILLISECONDS.sleep(ASK_EVERY_MILLIS);
            }
        } catch (InterruptedException ended) {
            Thread.currentThread().interrupt();
        }
    }

    @Override
    public void close() {
        asking.interrupt();
    }
}
