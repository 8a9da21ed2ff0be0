package org.axlecause.intake;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.Map;
import org.axlecause.access.Actor;

/** Takes a batch of events in from inside the service, through the same checks as any sender's. */
@ApplicationScoped
public class AcceptBatch {

    private static final String BATCH = "application/cloudevents-batch+json";

    private final Reception reception;
    private final AcceptEvents acceptEvents;

    AcceptBatch(Reception reception, AcceptEvents acceptEvents) {
        this.reception = reception;
        this.acceptEvents = acceptEvents;
    }

    /** One receipt per event of the JSON array, in order. */
    public List<Receipt> accept(byte[] batch, Actor actor) {
        return acceptEvents.accept(reception.message(BATCH, Map.of(), batch).attempts(), actor);
    }
}
