// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/shell/help_dialogs.h"

#include <QCoreApplication>
#include <QDialog>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QStandardItemModel>
#include <QVBoxLayout>

#include "ui/kit/buttons.h"
#include "ui/kit/cautions.h"
#include "ui/kit/data_table.h"
#include "ui/kit/messages.h"
#include "ui/kit/metrics.h"

namespace bw {

using namespace Qt::StringLiterals;

namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("HelpDialogs", text);
}

void addCloseRow(QVBoxLayout& column, QDialog& dialog) {
    auto* row = new QHBoxLayout;
    auto* close = new Button(tr("Close"), {}, Button::Kind::Primary);
    row->addStretch();
    row->addWidget(close);
    column.addLayout(row);
    QObject::connect(close, &QAbstractButton::clicked, &dialog, &QDialog::accept);
}

QStandardItemModel* keyModel(const QList<QAction*>& actions, QObject* parent) {
    auto* model = new QStandardItemModel(0, 2, parent);
    model->setHorizontalHeaderLabels({tr("Key"), tr("What it does")});
    for (const QAction* action : actions) {
        if (action->shortcut().isEmpty()) continue;
        QString words = action->text();
        model->appendRow({new QStandardItem(action->shortcut().toString(QKeySequence::NativeText)),
                          new QStandardItem(words.remove(u'&'))});
    }
    return model;
}

}  // namespace

QDialog* makeKeysDialog(const QList<QAction*>& actions, QWidget* parent) {
    auto* dialog = new QDialog(parent);
    dialog->setObjectName(u"help.keys"_s);
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    dialog->setWindowTitle(tr("Keys"));
    const QSize most = parent ? parent->size() : QSize(px(460), px(460));
    dialog->resize(QSize(px(460), px(460)).boundedTo(most * 0.95));
    auto* column = new QVBoxLayout(dialog);
    column->addWidget(new TextLabel(tr("Keys of the program and of the page in front"),
                                    TextSize::Lead, Role::Ink, true));
    auto* table = new DataTable;
    table->setModel(keyModel(actions, table));
    table->setEditTriggers(QAbstractItemView::NoEditTriggers);
    table->horizontalHeader()->setStretchLastSection(true);
    table->setColumnWidth(0, px(120));
    column->addWidget(table, 1);
    addCloseRow(*column, *dialog);
    return dialog;
}

QDialog* makeAboutDialog(QWidget* parent) {
    auto* dialog = new QDialog(parent);
    dialog->setObjectName(u"help.about"_s);
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    dialog->setWindowTitle(tr("About Boomwright"));
    dialog->setMinimumWidth(px(520));
    auto* column = new QVBoxLayout(dialog);
    column->setSpacing(px(8));
    column->addWidget(new TextLabel(tr("Boomwright %1").arg(QCoreApplication::applicationVersion()),
                                    TextSize::Verdict, Role::Ink, true));
    const QStringList paragraphs{
        tr("Puts a field-crop boom sprayer on the rate it should: plans sets and speeds, finds "
           "what is wrong, shows why."),
        tr("It calculates and permits nothing. Label, machine handbook, local law and trained or "
           "licensed people decide. It keeps no spray record."),
        tr("Every limit without data is shown as not checked. What a machine does is proved on the "
           "machine, on clean water."),
        tr("Free software under the GNU General Public License, version 3 or later; without any "
           "warranty.")};
    for (const QString& text : paragraphs) column->addWidget((new TextLabel(text))->wrapped());
    auto* caution = new CautionBox;
    caution->setTexts(cautionTexts({u"C26"_s}));
    column->addWidget(caution);
    addCloseRow(*column, *dialog);
    return dialog;
}

}  // namespace bw
