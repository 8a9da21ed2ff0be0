package org.axlecause.shared;

import com.fasterxml.jackson.core.JsonProcessingException;
import io.quarkus.runtime.configuration.MemorySize;
import io.vertx.core.http.HttpHeaders;
import io.vertx.ext.web.Router;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import java.util.List;
import org.axlecause.shared.RefusedException.Reason;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/** Refuses a body that announces itself over the limit, in words; the server itself would do so without any. */
@ApplicationScoped
class OversizeAnswer {

    private static final int BEFORE_THE_SERVERS_OWN = -100;

    private final long limit;

    OversizeAnswer(@ConfigProperty(name = "quarkus.http.limits.max-body-size") MemorySize limit) {
        this.limit = limit.asLongValue();
    }

    void register(@Observes Router router) {
        router.route().order(BEFORE_THE_SERVERS_OWN).handler(this::check);
    }

    private void check(RoutingContext context) {
        String length = context.request().getHeader(HttpHeaders.CONTENT_LENGTH);
        if (length != null && isOver(length)) {
            refuse(context);
        } else {
            context.next();
        }
    }

    private boolean isOver(String length) {
        try {
            return Long.parseLong(length) > limit;
        } catch (NumberFormatException e) {
            return false;
        }
    }

    private void refuse(RoutingContext context) {
        Problem problem = Problem.of(
                        Reason.TOO_LARGE.status(),
                        Reason.TOO_LARGE.code(),
                        Reason.TOO_LARGE.title(),
                        "The body is over the limit of " + limit
                                + " bytes; nothing was read. Send it in smaller parts.",
                        List.of())
                .about(context.request().path());
        context.response()
                .setStatusCode(problem.status())
                .putHeader(HttpHeaders.CONNECTION, "close")
                .putHeader(HttpHeaders.CONTENT_TYPE, Problem.MEDIA_TYPE)
                .end(text(problem))
                .onComplete(sent -> context.request().connection().close());
    }

    private static String text(Problem problem) {
        try {
            return Json.mapper().writeValueAsString(problem);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("A problem document is plain JSON", e);
        }
    }
}
