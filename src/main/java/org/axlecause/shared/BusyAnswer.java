package org.axlecause.shared;

import io.vertx.ext.web.Router;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import java.util.concurrent.Semaphore;
import org.axlecause.shared.RefusedException.Reason;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/**
 * Sheds load: beyond so many requests at once the next is refused at once with 503, so that those in work come through
 * and the worker threads that health and metrics need stay free.
 */
@ApplicationScoped
class BusyAnswer {

    private static final int AFTER_THE_BODY = -99;
    private static final String OPERATIONS = "/q/";

    private final int most;
    private final Semaphore places;

    BusyAnswer(@ConfigProperty(name = "axlecause.requests-at-once") int most) {
        this.most = most;
        places = new Semaphore(most);
    }

    void register(@Observes Router router) {
        router.route().order(AFTER_THE_BODY).handler(this::admit);
    }

    private void admit(RoutingContext context) {
        if (context.request().path().startsWith(OPERATIONS)) {
            context.next();
        } else if (places.tryAcquire()) {
            context.addEndHandler(ended -> places.release());
            context.next();
        } else {
            RouterAnswer.refuseUnread(
                    context,
                    Reason.UNAVAILABLE,
                    "The service is at its limit of " + most + " requests at once; nothing was read. Send it again.");
        }
    }
}
